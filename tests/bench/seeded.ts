/**
 * `npx tsx tests/bench/seeded.ts`: faults seeded in all right procedures, per kind: how many, how many found, by which
 * checks, how many of the rest are no fault for the independent executor. What is left is listed. Part of
 * `npm run bench`; a share of it runs as a test (tests/mutation/seeded.test.ts).
 */
import { RIGHT } from '../mutation/right.ts';
import { rows, trySeeds } from '../mutation/try-seeds.ts';

const results = RIGHT.map((path) => trySeeds(path));
const all = rows(results.flatMap(({ tried }) => tried));
const lines = all.map((row) => {
  const by = row.by.slice(0, 4).map(([check, count]) => `${check} ${count}`);
  return `| ${row.kind} | ${row.seeded} | ${row.found} | ${row.byItsOwn} | ${row.noFault} | ${row.missed.length} | ${by.join(', ')} |`;
});
process.stdout.write(
  `${[
    '| seeded fault | seeded | found | by its own check | no fault | not found | by |',
    '|---|---|---|---|---|---|---|',
    ...lines,
  ].join(
    '\n',
  )}\n\nFindings on the ${RIGHT.length} originals: ${results.flatMap(({ onRight }) => onRight).length}\n`,
);
for (const { kind, missed } of all) {
  if (missed.length === 0) continue;
  process.stdout.write(`\nNot found, ${kind}:\n`);
  for (const { path, seed } of missed) process.stdout.write(`  ${path}:${seed.line} ${seed.what}\n`);
}
