import type { Fact } from '../../model/facts.ts';
import type { Check } from '../check.ts';
import {
  agree,
  apartFromItself,
  CAUTION,
  capital,
  DEFER,
  isAre,
  standing,
  subject,
  them,
  told,
  typed,
} from '../speak.ts';

export const restoredOutOfOrder: Check = {
  name: 'restored-out-of-order',
  group: 'Order and completeness',
  severity: 'error',
  title: 'A system comes back while something of it is open, off or locked.',
  explanation: `
Filling with the plug out, switching on with the terminal cover off, running with the padlock on: the energy or the fluid
comes back before the machine is whole. The checker asks that everything that opens the system is closed, that its drain and
relief points are shut, and that no lock is on, before a step restores, fills, pressurises or runs it.

Close everything first. ${CAUTION}`,
  source:
    '29 CFR 1910.147 (e): machine components intact before lockout devices are removed (paragraph from memory)',
  bad: `
machine hydraulic-press "hydraulic press" {
  part frame "frame" fixed
  part strainer "sump strainer" on frame under drain-plug
  fastener drain-plug "drain plug" x1 torque 30 N·m
  fluid press-oil "hydraulic oil"
  system hydraulics "hydraulic system" holds 12 L press-oil drained at drain-plug
}
procedure change-oil "Change the oil" for hydraulic-press supplies 12 L press-oil {
  remove drain-plug
  clean strainer
  fill hydraulics
       ^^^^^^^^^^
  fit drain-plug
}
`,
  good: `
machine hydraulic-press "hydraulic press" {
  part frame "frame" fixed
  part strainer "sump strainer" on frame under drain-plug
  fastener drain-plug "drain plug" x1 torque 30 N·m
  fluid press-oil "hydraulic oil"
  system hydraulics "hydraulic system" holds 12 L press-oil drained at drain-plug
}
procedure change-oil "Change the oil" for hydraulic-press supplies 12 L press-oil {
  remove drain-plug
  clean strainer
  fit drain-plug
  fill hydraulics
}
`,
  says: (fact) => {
    const open = apartFromItself(fact);
    const defer = isHazardous(fact) ? ` ${DEFER}` : '';
    if (open.others.length > 0)
      return {
        message: `${capital(subject(fact))} ${agree(fact, 'comes', 'come')} back too early: ${standing(open)}.`,
        help: `Put this step after everything of ${subject(fact)} is closed and unlocked.${defer}`,
      };
    const isolated = told(fact, 'isolated');
    return {
      message: `${capital(subject(fact))} ${isAre(fact)} still ${isolated ? 'isolated' : 'drained'} when this step needs ${them(fact)}.`,
      help: `Write \`${isolated ? 'restore' : 'fill'} ${typed(fact.subject)}\` before this step.${defer}`,
    };
  },
};

function isHazardous(fact: Fact): boolean {
  const { hasLive, hasPressure, hasHeat } = fact.subject!.thing;
  return hasLive || hasPressure || hasHeat;
}
