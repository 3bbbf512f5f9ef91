export default function Page() {
  return (
    <main>
      <h1>Holdfast</h1>
    </main>
  );
}
