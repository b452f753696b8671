/**
 * HowTo data against what schema.org says of it (classes and properties as published; seen in its documentation):
 * which properties each class may have, positions, ISO 8601 durations. And what a page needs: text that ends no script.
 */
import { describe, expect, test } from 'vitest';
import { plainText } from '../../../../language-server/publish/document/types.ts';
import { howTo, howToScript, isoTime } from '../../../../language-server/publish/howto/howto.ts';
import { DOCUMENTS, documentsIn, stepsOf } from '../documents.ts';

const THING = ['@type', 'name', 'description', 'identifier', 'url', 'image'];
const LISTED = [...THING, 'position', 'itemListElement'];
const PROPERTIES: Readonly<Record<string, readonly string[]>> = {
  HowTo: [
    ...[...THING, '@context', 'about', 'inLanguage', 'version', 'dateModified'],
    ...['step', 'supply', 'tool', 'prepTime', 'performTime', 'totalTime', 'estimatedCost', 'yield'],
  ],
  HowToSection: LISTED,
  HowToStep: LISTED,
  HowToDirection: [...THING, 'position', 'text', 'beforeMedia', 'duringMedia', 'afterMedia'],
  HowToTip: [...THING, 'position', 'text'],
  HowToTool: [...THING, 'requiredQuantity'],
  HowToSupply: [...THING, 'requiredQuantity', 'estimatedCost'],
  QuantitativeValue: [...THING, 'value', 'unitText', 'minValue', 'maxValue', 'unitCode'],
  Thing: THING,
};

function faultsIn(value: unknown, path = ''): string[] {
  if (Array.isArray(value)) return value.flatMap((one, index) => faultsIn(one, `${path}[${index}]`));
  if (typeof value !== 'object' || value === null) return [];
  const one = value as Record<string, unknown>;
  const allowed = PROPERTIES[String(one['@type'])];
  if (!allowed) return [`${path}: ${one['@type']}`];
  return Object.entries(one).flatMap(([key, inner]) =>
    allowed.includes(key) ? faultsIn(inner, `${path}.${key}`) : [`${path}.${key}`],
  );
}

/** Positions count from 1 in every list. */
function positionsIn(list: readonly { position: number; itemListElement?: unknown }[]): void {
  expect(list.map(({ position }) => position)).toEqual(list.map((_, index) => index + 1));
  for (const { itemListElement } of list)
    if (Array.isArray(itemListElement)) positionsIn(itemListElement as typeof list);
}

describe.each(DOCUMENTS.map((document) => [document.id, document] as const))('%s', (_, document) => {
  const data = howTo(document);

  test('has only what schema.org knows', () => {
    expect(faultsIn(data)).toEqual([]);
    positionsIn(data.step);
  });

  test('says every step and every notice', () => {
    const text = JSON.parse(howToScript(document)) as unknown;
    const said = JSON.stringify(text);
    const inRows = new Set(
      stepsOf(document.flow).flatMap((step) =>
        (step.measurement?.rows ?? []).flatMap((row) => stepsOf(row.items).map(({ id }) => id)),
      ),
    );
    for (const step of stepsOf(document.flow)) {
      // What a reading asks for is told in one line: its notices are all there, its steps in short.
      if (!inRows.has(step.id)) expect(said).toContain(JSON.stringify(plainText(step.heading)).slice(1, -1));
      for (const notice of step.notices)
        expect(said).toContain(JSON.stringify(plainText(notice.text)).slice(1, -1));
    }
  });

  test('defers to local codes, as the page does', () => {
    for (const caution of document.cautions) expect(data.description).toContain(caution);
  });
});

test.each([
  [{ text: '5 h', low: 5, high: 5, unit: 'h' }, 'PT5H'],
  [{ text: '90 min', low: 90, high: 90, unit: 'min' }, 'PT1H30M'],
  [{ text: '45 s', low: 45, high: 45, unit: 's' }, 'PT45S'],
  [{ text: '2 d', low: 2, high: 2, unit: 'd' }, 'PT48H'],
  [{ text: '0 min', low: 0, high: 0, unit: 'min' }, undefined],
  [{ text: '5 m', low: 5, high: 5, unit: 'm' }, undefined],
  [undefined, undefined],
])('%o is %s', (measure, iso) => {
  expect(isoTime(measure)).toBe(iso);
});

test('a title cannot end the script it stands in', () => {
  const [document] = documentsIn(
    'machine m "M" { part a "</script><script>alert(1)</script><!--" }\nprocedure j "</ScRiPt>\u2028" for m { remove a\nrefit a }\n',
  );
  const text = howToScript(document!);
  expect(text).not.toMatch(/[<>&\u2028\u2029]/);
  expect((JSON.parse(text) as { name: string }).name).toBe(document!.title);
});
