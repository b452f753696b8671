/**
 * What a check is: its name, what it says and why, and a bad and a good example that run as tests. One file
 * per check; `all.ts` is the one list of them. The analyses produce facts (see ../model/facts.ts); a check
 * puts its fact into words. Invariant: `says` is pure and never throws on a fact of its own name.
 */
import type { Fact } from '../model/facts.ts';
import type { Severity } from '../report/finding.ts';

export type CheckGroup =
  | 'Order and completeness'
  | 'Fastening'
  | 'Hazards'
  | 'Fluids, faces, consumables'
  | 'Tools, time, people'
  | 'Flow and measurements'
  | 'Names and quantities'
  | 'Words and rules'
  | 'Machine'
  | 'Text';

export interface Check {
  /** What is wrong, in words a technician uses: `still-held`. */
  name: string;
  group: CheckGroup;
  severity: Severity;
  /** One line: `A part is taken off while fasteners still hold it.` */
  title: string;
  /** Why it matters and what the checker looks at; Markdown, a few short paragraphs. */
  explanation: string;
  /** Where the rule comes from: a standard, a published case, or `common practice, no source`. */
  source: string;
  /** A whole file that shows the fault. `^^^` under a place marks where the finding is expected. */
  bad: string;
  /** Its right twin, on which every check is silent. */
  good: string;
  /** The sentence for one fact, and what to do about it. */
  says(fact: Fact): { message: string; help?: string };
}
