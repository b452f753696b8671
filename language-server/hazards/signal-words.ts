/**
 * Signal words of safety notices under the two families of conventions, and the word that a harm asks for. The same
 * word means different things: `caution` is minor injury for ANSI and ISO, damage to equipment for the military
 * and aerospace books. So the convention is always said, never assumed by the caller.
 *
 * Sources: ANSI Z535.6 and ISO 3864-2:2016 (danger, warning, caution for high, medium, low risk; notice is not about
 * injury); MIL-STD-38784 and ASD-STE100 (warning: people; caution: equipment; no danger). Definitions seen second hand.
 */

export type Signal = 'danger' | 'warning' | 'caution' | 'notice' | 'note';

/** `ansi`: ANSI Z535.6, ISO 3864-2. `military`: MIL-STD-38784, ASD-STE100. */
export type Convention = 'ansi' | 'military';

export const DEFAULT_CONVENTION: Convention = 'ansi';

/** The worst credible outcome, as a machine file declares it. `kill` stands for death or serious injury. */
export const HARMS = ['will kill', 'can kill', 'can hurt', 'can damage'] as const;
export type Harm = (typeof HARMS)[number];

export function isHarm(text: string): text is Harm {
  return (HARMS as readonly string[]).includes(text);
}

export const CONVENTION_NAMES: Readonly<Record<Convention, string>> = {
  ansi: 'ANSI Z535.6',
  military: 'MIL-STD-38784 and ASD-STE100',
};

const WORD_FOR: Readonly<Record<Convention, Readonly<Record<Harm, Signal>>>> = {
  ansi: { 'will kill': 'danger', 'can kill': 'warning', 'can hurt': 'caution', 'can damage': 'notice' },
  military: { 'will kill': 'warning', 'can kill': 'warning', 'can hurt': 'warning', 'can damage': 'caution' },
};

/** What the word says under a convention; undefined where the convention does not have it as a safety word. */
const MEANING: Readonly<Record<Convention, Readonly<Partial<Record<Signal, string>>>>> = {
  ansi: {
    danger: 'death or serious injury if it is not avoided',
    warning: 'possible death or serious injury',
    caution: 'possible minor or moderate injury',
    notice: 'damage, and no injury',
  },
  military: { warning: 'injury or death', caution: 'damage to equipment' },
};

const STRENGTH: Readonly<Record<Signal, number>> = { note: 0, notice: 1, caution: 2, warning: 3, danger: 4 };

/** The mildest word that does for a harm. */
export function signalFor(harm: Harm, convention: Convention): Signal {
  return WORD_FOR[convention][harm];
}

export function meaningOf(signal: Signal, convention: Convention): string | undefined {
  return MEANING[convention][signal];
}

/** Whether the word says less than is needed. A stronger word than needed is not milder. */
export function isMilder(signal: Signal, needed: Signal): boolean {
  return STRENGTH[signal] < STRENGTH[needed];
}

export function strongest(signals: readonly Signal[]): Signal {
  return signals.reduce((best, one) => (STRENGTH[one] > STRENGTH[best] ? one : best), 'note');
}

/**
 * V. Live parts below it need not be made dead for work on or near them: 29 CFR 1910.333(a)(1), from memory. From
 * there on a shock can kill.
 */
export const LIVE_CAN_KILL = 50;
