import type { Check } from '../check.ts';
import { agree, capital, isAre, subject, them } from '../speak.ts';

export const toolUnused: Check = {
  name: 'tool-unused',
  group: 'Tools, time, people',
  severity: 'information',
  title: 'A listed tool is used by no step.',
  explanation: `
A tool on the list that no step uses is either left over from an older text, or the step that needs it is missing. The checker looks for the
tool in the steps and for its words in their sentences. Wrenches and other tools for turning count as used where something is tightened or
loosened, locks where something is locked, gauges and testers where a step measures without naming with what; an angle gauge only where
something is turned by an angle.

Take it off the list, or name it in the step that uses it.`,
  source: 'common practice, no source; an open rover manual lists a band saw that no step uses',
  bad: `
machine door "workshop door" {
  part frame "frame" fixed
  part leaf "leaf" on frame held by hinge-pins
  fastener hinge-pins "hinge pins" x2
  tool drift "drift"
  tool bench-saw "bench saw"
}
procedure renew-leaf "Renew the leaf" for door tools drift, bench-saw supplies leaf {
                                                            ^^^^^^^^^
  remove hinge-pins with drift
  remove leaf and discard
  fit new leaf
  fit hinge-pins with drift
}
`,
  good: `
machine door "workshop door" {
  part frame "frame" fixed
  part leaf "leaf" on frame held by hinge-pins
  fastener hinge-pins "hinge pins" x2
  tool drift "drift"
  tool bench-saw "bench saw"
}
procedure renew-leaf "Renew the leaf" for door tools drift, bench-saw supplies leaf {
  remove hinge-pins with drift
  remove leaf and discard
  fit new leaf with bench-saw "Cut it to the height of the frame."
  fit hinge-pins with drift
}
`,
  says: (fact) => ({
    message: `${capital(subject(fact))} ${isAre(fact)} listed and no step uses ${them(fact)}.`,
    help: `Take ${them(fact)} off the list, or write \`with\` where ${agree(fact, 'it is', 'they are')} used.`,
  }),
};
