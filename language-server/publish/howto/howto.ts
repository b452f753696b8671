/**
 * A procedure as schema.org HowTo, for machines that read pages (JSON-LD). It has no place for variants, torques by
 * stage or states: these stand in the sentences. What is safe to leave out for a search engine is not left out for a
 * reader: the page itself is the procedure.
 */
import { stepsIn } from '../document/rest.ts';
import type { FlowItem, Measure, Notice, ProcedureDocument, Rich, Step } from '../document/types.ts';
import { plainText } from '../document/types.ts';

export interface HowTo {
  '@context': 'https://schema.org';
  '@type': 'HowTo';
  name: string;
  description: string;
  inLanguage: string;
  identifier?: string;
  version?: string;
  dateModified?: string;
  about: { '@type': 'Thing'; name: string };
  /** ISO 8601. */
  totalTime?: string;
  tool: { '@type': 'HowToTool'; name: string }[];
  supply: Supply[];
  step: (Section | HowToStep)[];
}

export interface Supply {
  '@type': 'HowToSupply';
  name: string;
  requiredQuantity?: number | { '@type': 'QuantitativeValue'; value: number; unitText: string };
}

export interface Section {
  '@type': 'HowToSection';
  name: string;
  position: number;
  itemListElement: (Section | HowToStep)[];
}

export interface HowToStep {
  '@type': 'HowToStep';
  name: string;
  position: number;
  url: string;
  itemListElement: Piece[];
}

export interface Piece {
  '@type': 'HowToDirection' | 'HowToTip';
  position: number;
  text: string;
}

/** `anchorOf`: how the page writes the anchor of a step. */
export function howTo(document: ProcedureDocument, anchorOf = (id: string): string => id): HowTo {
  const { lists } = document;
  const time = isoTime(lists.times.stated);
  return {
    '@context': 'https://schema.org',
    '@type': 'HowTo',
    name: document.title,
    description: [document.purpose, ...document.cautions].join(' '),
    inLanguage: document.language,
    ...(document.number === undefined ? {} : { identifier: document.number }),
    ...(document.issue === undefined ? {} : { version: document.issue }),
    ...(document.date === undefined ? {} : { dateModified: document.date }),
    about: { '@type': 'Thing', name: document.machine.title },
    ...(time === undefined ? {} : { totalTime: time }),
    tool: [...lists.tools, ...lists.protection].map(({ name, when }) => ({
      '@type': 'HowToTool',
      name: only(name, when),
    })),
    supply: [
      ...lists.newParts.map(({ name, count, when }) => supply(only(name, when), count)),
      ...lists.fluids.map(({ name, amount, issued, when }) => supply(only(name, when), amount ?? issued)),
      ...lists.consumables.map(({ name, when }) => supply(only(name, when), undefined)),
    ],
    step: linked(numbered(document.flow.flatMap((item) => itemOf(item))), anchorOf),
  };
}

/** The JSON-LD as it may stand in a `<script>` of a page: no `<` that could end it, no line ends that scripts mind. */
export function howToScript(document: ProcedureDocument, anchorOf?: (id: string) => string): string {
  return JSON.stringify(howTo(document, anchorOf)).replace(
    /[<>&\u2028\u2029]/g,
    (sign) => `\\u${sign.charCodeAt(0).toString(16).padStart(4, '0')}`,
  );
}

function only(name: string, when: { sentence: string } | undefined): string {
  return when ? `${name} (${when.sentence})` : name;
}

function supply(name: string, amount: number | Measure | undefined): Supply {
  if (typeof amount === 'number') return { '@type': 'HowToSupply', name, requiredQuantity: amount };
  if (amount?.low === undefined || amount.low !== amount.high) return { '@type': 'HowToSupply', name };
  return {
    '@type': 'HowToSupply',
    name,
    requiredQuantity: { '@type': 'QuantitativeValue', value: amount.low, unitText: amount.unit },
  };
}

type Unnumbered = Section | HowToStep;

function itemOf(item: FlowItem, condition?: string): Unnumbered[] {
  const inCase = [condition, item.when?.sentence].filter((one) => one !== undefined).join('; ');
  const under = inCase === '' ? undefined : inCase;
  switch (item.kind) {
    case 'step':
      return [stepOf(item, under)];
    case 'task':
      return section(item.title, item.items, under);
    case 'group':
      return item.items.length > 0
        ? section(item.title, item.items, under)
        : [plainStep(item.id, [item.title, plainText(item.note)].join('. '), under)];
    case 'branch':
      return item.ways
        .filter(({ goOn }) => !goOn)
        .flatMap((way) => section(`${item.question} ${way.label}`, way.items, under));
    case 'repeat':
      return [
        ...section(item.sentence, item.items, under),
        ...(item.otherwise ? section(item.otherwise.sentence, item.otherwise.items, under) : []),
      ];
    case 'hold':
      return section(plainText(item.text), item.items, under);
    case 'choice':
      return [plainStep(item.id, item.sentence, under)];
    case 'stop':
      return [plainStep(item.id, plainText(item.text), under)];
    case 'note':
      return [plainStep(item.id, noticeText(item.notice), under)];
  }
}

function section(name: string, items: readonly FlowItem[], condition: string | undefined): Section[] {
  const list = numbered(items.flatMap((item) => itemOf(item)));
  if (list.length === 0) return [];
  return [{ '@type': 'HowToSection', name: named(name, condition), position: 0, itemListElement: list }];
}

function named(name: string, condition: string | undefined): string {
  return condition === undefined ? name : `${name} (${condition})`;
}

function plainStep(id: string, text: string, condition: string | undefined): HowToStep {
  return {
    '@type': 'HowToStep',
    name: named(text, condition),
    position: 0,
    url: id,
    itemListElement: [{ '@type': 'HowToDirection', position: 1, text: named(text, condition) }],
  };
}

/** Notices first, as tips; then what is done, sentence by sentence. */
function stepOf(step: Step, condition: string | undefined): HowToStep {
  const name = named(plainText(step.heading), condition);
  const direction = (text: string): Omit<Piece, 'position'> => ({ '@type': 'HowToDirection', text });
  const tip = (text: string): Omit<Piece, 'position'> => ({ '@type': 'HowToTip', text });
  const sentences = (all: readonly Rich[]) => all.map((one) => plainText(one));
  const rows = step.measurement?.rows ?? [];
  const pieces = [
    ...step.notices.map((notice) => tip(noticeText(notice))),
    direction(name),
    ...[...sentences(step.more), ...sentences(step.said)].map(direction),
    ...step.detail.fastening.flatMap(({ order }) => (order ? [direction(order.sentence)] : [])),
    ...rows.flatMap(({ reading, action, items }) => [
      ...stepsIn(items).flatMap(({ notices }) => notices.map((notice) => tip(noticeText(notice)))),
      direction(`${reading}: ${action}`),
    ]),
    ...sentences(step.expect).map(tip),
  ].filter(({ text }, index, all) => all.findIndex((one) => one.text === text) === index);
  return {
    '@type': 'HowToStep',
    name,
    position: 0,
    url: step.id,
    itemListElement: pieces.map((piece, index) => ({ ...piece, position: index + 1 })),
  };
}

function noticeText({ word, text }: Notice): string {
  return `${word}: ${plainText(text)}`;
}

/** Addresses in the page, from the ids of the document. */
function linked(list: readonly Unnumbered[], anchorOf: (id: string) => string): Unnumbered[] {
  return list.map((one) =>
    one['@type'] === 'HowToStep'
      ? { ...one, url: `#${anchorOf(one.url)}` }
      : { ...one, itemListElement: linked(one.itemListElement, anchorOf) },
  );
}

function numbered(list: readonly Unnumbered[]): Unnumbered[] {
  return list.map((one, index) => ({ ...one, position: index + 1 }));
}

/** `PT1H30M`; undefined for what is no single time. ISO 8601, duration with hours, minutes and seconds. */
export function isoTime(measure: Measure | undefined): string | undefined {
  const seconds = measure && SECONDS[measure.unit];
  if (!measure || seconds === undefined || measure.high === undefined || measure.high <= 0) return undefined;
  const all = Math.round(measure.high * seconds);
  const [hours, minutes, rest] = [Math.floor(all / 3600), Math.floor((all % 3600) / 60), all % 60];
  const text = `${hours ? `${hours}H` : ''}${minutes ? `${minutes}M` : ''}${rest ? `${rest}S` : ''}`;
  return text === '' ? undefined : `PT${text}`;
}

const SECONDS: Readonly<Record<string, number>> = { s: 1, min: 60, h: 3600, d: 86400 };
