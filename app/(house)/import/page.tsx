import { Page } from '#ui/frame/page';
import { ImportForm } from '#ui/import/import-form';
import { importFile, previewFile } from './actions';

export const metadata = { title: 'Import' };

export default function ImportPage() {
  return (
    <Page
      title="Import a facility file"
      lead={<p>First every error of the file, or what it would change; then, when you say so, all of it or nothing.</p>}
    >
      <ImportForm preview={previewFile} keep={importFile} />
    </Page>
  );
}
