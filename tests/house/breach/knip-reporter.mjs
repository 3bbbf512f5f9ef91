/** A reporter for knip: how many files it has read, and one complaint for each thing nobody uses. */
export default function report({ issues, counters, cwd }) {
  const complaints = Object.entries(issues).flatMap(([rule, byFile]) =>
    Object.values(byFile).flatMap((bySymbol) =>
      Object.values(bySymbol).map((issue) => ({
        rule,
        file: issue.filePath.replace(`${cwd}/`, ''),
        symbol: issue.symbol,
      })),
    ),
  );
  console.log(JSON.stringify({ filesRead: counters.processed, complaints }));
}
