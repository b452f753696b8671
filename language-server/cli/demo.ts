/**
 * `dowel demo`: a first look at what Dowel does. Checks the demo procedures: those meant to be right, which
 * must be silent, and those below a folder named `broken`, whose findings it shows.
 */
import { existsSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import { DEFERENCE } from '../report/deference.ts';
import { lineStore } from '../report/frame.ts';
import { summaryText } from '../report/summary.ts';
import { findingText } from '../report/text.ts';
import { type Checked, checkPaths, painter } from './check.ts';
import { namesIn } from './names.ts';
import { complain, type ExitCode, print } from './output.ts';
import { filesOf } from './walk.ts';

/** Exit code 1 where a right procedure is reported or a broken one is not. */
export async function demo(): Promise<ExitCode> {
  const folder = procedures();
  if (folder === undefined) {
    complain('cannot find the demo procedures. Run it from the project: npm run demo');
    return 2;
  }
  const { files } = filesOf([relative(process.cwd(), folder)], namesIn(process.cwd()));
  const broken = files.filter((file) => file.split('/').includes('broken'));
  const right = files.filter((file) => !broken.includes(file));

  print(`Procedures that are meant to be right (${right.length} files):\n`);
  const rightly = await checkPaths(right);
  for (const file of right) {
    const count = rightly.findings.filter((finding) => finding.file === file).length;
    print(`  ${count === 0 ? 'silent  ' : 'REPORTED'}  ${file}`);
  }
  await show(rightly);

  print(`\nThe same work with faults put in (${broken.length} files):\n`);
  const brokenly = await checkPaths(broken);
  await show(brokenly);

  print(`\n${NEXT}`);
  const missed = broken.filter((file) => !brokenly.findings.some((finding) => finding.file === file));
  for (const file of missed) complain(`no finding in ${file}, which is meant to be broken.`);
  return rightly.findings.length > 0 || missed.length > 0 ? 1 : 0;
}

const NEXT = `Where to look next:
  a procedure              procedures/, in any editor
  one check                node .build/dowel.cjs explain still-held
  all checks               node .build/dowel.cjs explain
  a procedure of your own  node .build/dowel.cjs check FILE
  how it is built          DEVELOPERS.md`;

async function show({ findings, files, disk }: Checked): Promise<void> {
  const paint = await painter(undefined);
  const lines = lineStore((file) => disk.read(file));
  for (const finding of findings) print(`${findingText(finding, { lines, paint })}\n`);
  print(summaryText(findings, files.length));
  print(DEFERENCE);
}

/** The folder of demo procedures, looked for from the program upwards. */
function procedures(): string | undefined {
  for (let folder = import.meta.dirname; folder !== dirname(folder); folder = dirname(folder)) {
    if (existsSync(join(folder, 'procedures'))) return join(folder, 'procedures');
  }
  return undefined;
}
