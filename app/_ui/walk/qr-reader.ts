import { BarcodeDetector, prepareZXingModule } from 'barcode-detector/ponyfill';

// Its wasm is served from here: left to itself the package would fetch it from elsewhere.
const WASM = new URL('../../../node_modules/zxing-wasm/dist/reader/zxing_reader.wasm', import.meta.url).href;
let detector: BarcodeDetector | undefined;

/** Has what reads labels loaded, so that it is there without a signal. */
export async function warmReader(): Promise<void> {
  reader();
  await fetch(WASM);
}

/** What the QR symbol in a picture says; null when there is none to be read. */
export async function readQr(picture: ImageBitmapSource): Promise<string | null> {
  const [first] = await reader().detect(picture);
  return first?.rawValue ?? null;
}

function reader(): BarcodeDetector {
  if (!detector) {
    prepareZXingModule({
      overrides: { locateFile: (path: string, prefix: string) => (path.endsWith('.wasm') ? WASM : prefix + path) },
    });
    detector = new BarcodeDetector({ formats: ['qr_code'] });
  }
  return detector;
}
