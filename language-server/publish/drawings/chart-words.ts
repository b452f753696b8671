/** The strip-and-rebuild chart in words: a sentence for each bar, a description, a table. */
import type { Bar, Chart } from './bars.ts';
import { nameOf } from './chart-rows.ts';
import type { TextAlternative } from './svg.ts';

const FURTHER = { off: 'is left aside', out: '', aside: 'is taken off', apart: '' } as const;

/** One bar in words. */
export function sentenceOf(bar: Bar): string {
  const off = { off: 'comes off', out: 'comes out', aside: 'is moved aside', apart: 'is disconnected' }[
    bar.state
  ];
  const start = bar.from === 0 ? `is away from the start` : `${off} at step ${bar.from}`;
  const gone = bar.thrownAway === undefined ? '' : ', is thrown away';
  const back = {
    back: 'goes back',
    new: 'is replaced by a new one',
    trial: 'is fitted on trial',
    further: FURTHER[bar.state],
    never: '',
  }[bar.end];
  const end = bar.to === undefined ? ' and stays away' : ` and ${back} at step ${bar.to}`;
  const name = nameOf(bar);
  return `${name.charAt(0).toUpperCase()}${name.slice(1)} ${start}${gone}${end}${bar.case ? `, if ${bar.case}` : ''}.`;
}

export function descriptionOf({ bars, steps, undecided }: Chart): string {
  const lost = undecided.length > 0 ? ` Not followed to the end: ${undecided.join(', ')}.` : '';
  return bars.length === 0
    ? `Nothing comes off in the ${steps.length} steps.${lost}`
    : `${steps.length} steps from left to right; one bar for each thing that is away. ${bars.map(sentenceOf).join(' ')}${lost}`;
}

export function alternativeOf({ bars, steps }: Chart, caption: string): TextAlternative {
  const at = (step: number | undefined, none: string) =>
    step === undefined || step === 0 ? none : (steps[step - 1]?.label ?? String(step));
  return {
    kind: 'table',
    caption,
    head: ['Thing', 'Off at step', 'Back at step', 'How it ends', 'Only if'],
    rows: bars.map((bar) => [
      nameOf(bar),
      at(bar.from, 'from the start'),
      at(bar.to, 'not'),
      HOW[bar.end],
      bar.case ?? '',
    ]),
    things: bars.map(({ thing }) => thing),
  };
}

const HOW: Readonly<Record<Bar['end'], string>> = {
  back: 'the same one goes back',
  new: 'a new one goes in',
  trial: 'on trial',
  further: 'see its next row',
  never: 'stays away',
};
