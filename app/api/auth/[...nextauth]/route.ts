import { fromOutside } from '#server/sign-in/outside';

interface Place {
  params: Promise<{ nextauth: string[] }>;
}

/** Where an outside issuer sends people back to. Everything else of signing in is a form of our own pages. */
export async function GET(request: Request, { params }: Place): Promise<Response> {
  const { nextauth } = await params;
  return nextauth.join('/') === 'callback/outside' ? await fromOutside(request) : new Response(null, { status: 404 });
}
