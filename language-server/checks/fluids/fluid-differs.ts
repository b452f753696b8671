import type { Check } from '../check.ts';
import { called } from '../grammatical.ts';
import { agree, subject } from '../speak.ts';

export const fluidDiffers: Check = {
  name: 'fluid-differs',
  group: 'Fluids, faces, consumables',
  severity: 'error',
  title: 'A step uses another fluid or compound than the declared one.',
  explanation: `
Mineral oil in a brake swells every seal of it, and copper paste where thread lock belongs lets the bolt go. The checker compares what is filled
in, topped up, coated or lubricated with what the machine file says that the system \`holds\` or the joint is \`coated with\` or
\`lubricated with\`.

Flushing is not reported: what is drained again by a later step may be anything. Nor is a fluid or thing that is there in some variants
only.`,
  source: 'common practice, no source',
  bad: `
machine mower "verge mower" {
  part deck "deck" fixed
  part plug "drain plug" on deck
  part cap "filler cap" on deck
  fluid pump-oil "hydraulic oil"
  fluid brake-oil "brake fluid"
  system brakes "brake circuit" holds 0.4 L brake-oil drained at plug filled at cap
}
procedure change-fluid "Change the brake fluid" for mower {
  drain brakes
  fill brakes with 0.4 L pump-oil
                         ^^^^^^^^
}
`,
  good: `
machine mower "verge mower" {
  part deck "deck" fixed
  part plug "drain plug" on deck
  part cap "filler cap" on deck
  fluid pump-oil "hydraulic oil"
  fluid brake-oil "brake fluid"
  system brakes "brake circuit" holds 0.4 L brake-oil drained at plug filled at cap
}
procedure change-fluid "Change the brake fluid" for mower {
  drain brakes
  fill brakes with 0.4 L brake-oil
}
`,
  says: (fact) => {
    const { declared, name, clause } = fact.words!;
    const is = agree(fact, 'is', 'are');
    const own =
      clause === 'holds' ? `${agree(fact, 'holds', 'hold')} ${declared}` : `${is} ${clause} ${declared}`;
    return {
      message: `This step uses ${called(fact.others![0]!)}, and ${subject(fact)} ${own}.`,
      help: `Write \`${name}\` here, or mend the machine file. What is drained again by a later step may be anything.`,
    };
  },
};
