/**
 * `npx tsx tests/bench/seeded.ts`: faults seeded in all right procedures, per kind: how many, how many found, by which
 * checks, how many of the rest are no fault for the independent executor. What is left is listed. Part of
 * `npm run bench`; a share of it runs as a test (tests/mutation/seeded.test.ts).
 */
import { RIGHT } from '../mutation/right.ts';
import { rows, trySeeds } from '../mutation/try-seeds.ts';

const results = RIGHT.map((path) => trySeeds(path, 1, true));
const all = rows(results.flatMap(({ tried }) => tried));
const lines = all.map((row) => {
  const by = row.by.slice(0, 4).map(([check, count]) => `${check} ${count}`);
  return `| ${row.kind} | ${row.seeded} | ${row.found} | ${row.alsoWrong} | ${row.byItsOwn} | ${row.noFault} | ${row.open.length} | ${by.join(', ')} |`;
});
process.stdout.write(
  `${[
    '| seeded fault | seeded | found | of these wrong for the executor | by its own check | no fault for the executor | open | by |',
    '|---|---|---|---|---|---|---|---|',
    ...lines,
  ].join(
    '\n',
  )}\n\nFindings on the ${RIGHT.length} originals: ${results.flatMap(({ onRight }) => onRight).length}\n`,
);
for (const { kind, open } of all) {
  if (open.length === 0) continue;
  process.stdout.write(`\nOpen, ${kind}:\n`);
  for (const { path, seed, executor } of open)
    process.stdout.write(`  ${path}:${seed.line} ${seed.what} (${executor?.join(', ')})\n`);
}
process.stdout.write('\nNo fault for the executor:\n');
for (const { path, seed, checks, executor } of results.flatMap(({ tried }) => tried))
  if (checks.length === 0 && executor?.length === 0)
    process.stdout.write(`  ${seed.kind}: ${path}:${seed.line} ${seed.what}\n`);
