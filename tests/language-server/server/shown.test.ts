/** What panels beside the text are given: every element leads to the line it comes from. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { FollowedCases } from '../../../language-server/server/handlers/cases.ts';
import type { Shown } from '../../../language-server/server/handlers/shown.ts';
import { type Editor, editor } from './client.ts';

const MACHINE = `machine press "bench press" {
  variant drive: hand, motor
  part bed "bed" fixed
  part cover "cover" on bed  held by cover-screws  sealed by ring
  part lever "lever" on bed  under cover
  seal ring "ring" on bed
  fastener cover-screws "cover screws" x4
}
`;
const JOB = `use "press.dowel"

procedure open-up "Open & close the <press>"
  for press
{
  remove cover-screws
  remove cover
  remove ring
  remove lever
  refit lever
  refit ring
  refit cover
  fit cover-screws by hand
}
`;

let open: Editor;
beforeAll(async () => {
  open = await editor({ 'press.dowel': MACHINE, 'open-up.dowel': JOB });
});
afterAll(() => open.close());

const shown = (method: string, piece: string) =>
  open.ask<Shown | null>(method, {
    uri: open.uri('open-up.dowel'),
    position: open.at('open-up.dowel', piece),
  });

/** The words of the source line that a place leads to. */
const lineOf = ({ uri, range }: Shown['places'][number]) =>
  open.texts.get(uri.split('/').at(-1)!)!.split('\n')[range.start.line]!.trim();

describe('the preview', () => {
  it('has an element for every step, with the line of the step', async () => {
    const page = (await shown('dowel/preview', 'remove ring'))!;
    expect(page.title).toBe('Open & close the <press>');
    expect(page.html).toContain('Open &amp; close the &lt;press&gt;');
    expect(page.places.map(lineOf)).toEqual(
      JOB.slice(JOB.indexOf('{') + 1, JOB.lastIndexOf('}'))
        .trim()
        .split('\n')
        .map((line) => line.trim()),
    );
    for (const { by, key } of page.places) {
      expect(by).toBe('id');
      expect(page.html).toContain(` id="${key}"`);
    }
    expect(page.html).not.toContain('file:///');
  });

  it('is there for a cursor above the procedure, and not for a file without one', async () => {
    expect((await shown('dowel/preview', 'use'))?.title).toBe('Open & close the <press>');
    const position = { line: 0, character: 0 };
    expect(await open.ask('dowel/preview', { uri: open.uri('press.dowel'), position })).toBeNull();
  });
});

describe('the chart', () => {
  it('marks each bar with the step that begins it', async () => {
    const chart = (await shown('dowel/chart', 'remove ring'))!;
    const steps = [...chart.html.matchAll(/data-step="([^"]+)"/g)].map(([, id]) => id!);
    expect(steps.length).toBeGreaterThan(2);
    const lines = steps.map((id) => lineOf(chart.places.find(({ by, key }) => by === 'step' && key === id)!));
    expect(lines).toContain('remove cover');
    expect(lines.every((line) => line.startsWith('remove'))).toBe(true);
  });
});

describe('the map', () => {
  it('leads from each box to its declaration', async () => {
    const map = (await shown('dowel/map', 'remove ring'))!;
    const boxes = [...map.html.matchAll(/data-thing="([^"]+)"/g)].map(([, name]) => name!);
    expect(boxes.sort()).toEqual(['bed', 'cover', 'cover-screws', 'lever', 'ring']);
    for (const { key, uri, range } of map.places) {
      const line = open.texts.get(uri.split('/').at(-1)!)!.split('\n')[range.start.line]!;
      expect(line.slice(range.start.character, range.end.character)).toBe(key);
    }
  });
});

it('counts the cases: two drives', async () => {
  const counted = await open.ask<FollowedCases[]>('dowel/cases', { uri: open.uri('open-up.dowel') });
  expect(counted).toEqual([{ procedure: 'open-up', cases: 2 }]);
});
