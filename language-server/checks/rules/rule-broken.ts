import type { Fact } from '../../model/facts.ts';
import type { Check } from '../check.ts';

export const ruleBroken: Check = {
  name: 'rule-broken',
  group: 'Words and rules',
  severity: 'error',
  title: 'A rule of the house or of the machine is not kept.',
  explanation: `
A rule stands in the machine file, in a file that it uses, or in a file that the configuration names. It says what is
always done, or never, before, after or while something else; and its own sentence says why. The checker goes through
the steps in every variant and outcome and looks whether the rule is kept.

A rule that forbids a step is not kept by writing the step in other words: who removes a bolt has loosened it, and who
unbolts a part has removed its bolts. Nothing is said where the checker cannot tell, for example about a procedure that
is printed elsewhere. The rule is shown beside the finding; a reason to leave it once is written down with \`allow\`.`,
  source:
    'the rule itself; its forms after Dwyer, Avrunin and Corbett, Patterns in property specifications for finite-state verification (1999)',
  bad: `
machine compressor "compressor" {
  part housing "housing" fixed
  part flywheel "flywheel" on housing held by flywheel-bolt
  fastener flywheel-bolt "flywheel bolt" torque 60 N·m
  tool strap "holding strap" locks flywheel
  rule strap-first "The flywheel bolt is only undone with the flywheel held: it spins and skins knuckles." {
    before loosen flywheel-bolt  require strap fitted
  }
}
procedure pull-wheel "Take the flywheel off" for compressor ends with flywheel off {
  remove flywheel-bolt
         ^^^^^^^^^^^^^
  remove flywheel
}
`,
  good: `
machine compressor "compressor" {
  part housing "housing" fixed
  part flywheel "flywheel" on housing held by flywheel-bolt
  fastener flywheel-bolt "flywheel bolt" torque 60 N·m
  tool strap "holding strap" locks flywheel
  rule strap-first "The flywheel bolt is only undone with the flywheel held: it spins and skins knuckles." {
    before loosen flywheel-bolt  require strap fitted
  }
}
procedure pull-wheel "Take the flywheel off" for compressor ends with flywheel off {
  lock flywheel with strap
  remove flywheel-bolt
  unlock flywheel
  remove flywheel
}
`,
  says: (fact) => ({ message: `${ruleName(fact)} ${whatIsWrong(fact)}.`, help: help(fact) }),
};

/** `“Turn by hand first” is not kept:`; a rule without a sentence is told by its name. */
function ruleName({ words = {} }: Fact): string {
  const sentence = words.sentence!.trim().replace(/\.$/, '');
  return sentence === '' ? `The rule \`${words.rule}\` is not kept:` : `“${sentence}” is not kept:`;
}

function whatIsWrong({ words = {} }: Fact): string {
  const { scope, where } = words;
  const [trigger, demand] = [`\`${words.trigger}\``, `\`${words.demand}\``];
  const [first, second] = words.form!.split(' ');
  const cause = first === 'state' ? `it is so that ${trigger}` : `${trigger} is done`;
  if (words.ask === 'require') {
    if (second === 'state') {
      if (scope === 'before') return `just before ${cause}, it is not so that ${demand}`;
      if (scope === 'after') return `after ${cause}, it never comes to be so that ${demand}`;
      if (scope === 'while') return `here it is so that ${trigger}, and not that ${demand}`;
      return where === 'start'
        ? `from the start it is not so that ${demand}`
        : `from here on it is not so that ${demand}`;
    }
    if (scope === 'before') return `no ${demand} comes before ${trigger}`;
    if (scope === 'after') return `no ${demand} comes after ${trigger}`;
    if (scope === 'while') return `no ${demand} comes while it is so that ${trigger}`;
    return `no step is ${demand}`;
  }
  if (second === 'state') {
    if (scope === 'before') return `just before ${cause}, it is so that ${demand}`;
    if (scope === 'after') return `after ${cause}, it comes to be so that ${demand}`;
    if (scope === 'while') return `here it is so that ${trigger}, and also that ${demand}`;
    return where === 'start'
      ? `from the start it is so that ${demand}`
      : `from here on it is so that ${demand}`;
  }
  if (scope === 'before') return `${demand} comes before ${trigger}`;
  if (scope === 'after') return `${demand} comes after ${trigger}`;
  if (scope === 'while') return `${demand} is done while it is so that ${trigger}`;
  return `this is \`${words.demand}\``;
}

function help({ words = {} }: Fact): string {
  const { scope, demand, where } = words;
  const waive = `or write down why it does not hold here: \`allow rule-broken because "…"\`.`;
  const isState = words.form!.endsWith('state');
  if (words.ask === 'never') {
    if (isState) return `See to it that this is not so here, ${waive}`;
    return scope === 'always'
      ? `Leave the step out, ${waive}`
      : `Put the step where the rule lets it be, ${waive}`;
  }
  if (isState)
    return scope === 'after'
      ? `Bring it about after this step, ${waive}`
      : `Bring it about before this step, ${waive}`;
  if (scope === 'before') return `Write \`${demand}\` before this step, ${waive}`;
  if (scope === 'after') return `Write \`${demand}\` after this step, ${waive}`;
  return where === 'end'
    ? `Write \`${demand}\` where it belongs, ${waive}`
    : `Write \`${demand}\` before this step, ${waive}`;
}
