/** Texts with a cursor: `▮` marks the place and is taken out before the text is used. */

import { View } from '../../../language-server/features/view.ts';
import { memoryHost, type SourceHost } from '../../../language-server/project/project.ts';

export interface Placed {
  host: SourceHost;
  view: View;
  path: string;
  text: string;
  offset: number;
}

export const MARK = '▮';

/** Files of which exactly one has the cursor. */
export function placed(files: Readonly<Record<string, string>>): Placed {
  const path = Object.keys(files).find((one) => files[one]!.includes(MARK));
  if (path === undefined) throw new Error('No text has a cursor.');
  const marked = files[path]!;
  const offset = marked.indexOf(MARK);
  const text = marked.replace(MARK, '');
  const host = memoryHost({ ...files, [path]: text });
  return { host, view: new View(host), path, text, offset };
}

/** A machine that many of these tests share. */
export const PRESS = `machine press "bench press" {
  variant drive: hand, motor
  value play "largest play" = 0.2 mm
  system mains "mains supply" live 230 V  isolated at plug-switch  proved with tester  only drive is motor
  system oil "press oil" holds 2 L press-oil  drained at drain-plug  filled at filler-cap
  fluid press-oil "hydraulic oil, ISO VG 46"
  isolator plug-switch "plug switch" in mains
  part bed "bed" fixed
  part cover "cover" on bed  held by cover-screws  sealed by cover-gasket
  part lever "lever" on cover
  part guides "guides" positions left, right  on bed  under cover
  part drain-plug "drain plug" on bed
  part filler-cap "filler cap" on bed
  seal cover-gasket "cover gasket" on bed  single-use
  fastener cover-screws "cover screws" x4  thread M6x1  class 8.8  plan { 4 N·m; 9 N·m }
  connection feed-hose "feed hose" joins cover to bed
  tool wrench "torque wrench" range 5..60 N·m
  tool tester "voltage tester"
  consumable grease "bearing grease"
}
`;

/** A job on the press around some steps. */
export function job(steps: string, head = ''): Record<string, string> {
  return {
    'press.dowel': PRESS,
    'job.dowel': `use "press.dowel"\n\nprocedure job "A job"\n  for press\n${head}{\n${steps}\n}\n`,
  };
}
