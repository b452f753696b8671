/** What panels of an editor ask, and fixes, rewriting and laying out as an editor asks for them. */
import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { afterAll, beforeAll, describe, expect, it, onTestFinished, vi } from 'vitest';
import type { CodeAction, CodeLens, InlayHint, SignatureHelp, TextEdit } from 'vscode-languageserver/node';
import { Trial } from '../../../language-server/features/trial.ts';
import type { MachineParts, RebuildAnswer } from '../../../language-server/server/handlers/new-procedure.ts';
import type { StateTree } from '../../../language-server/server/handlers/state.ts';
import { job, PRESS } from '../features/cursor.ts';
import { changed, type Editor, edited, editor, positionOf } from './client.ts';

const STEPS = `  task strip "Strip" {
    remove lever
    remove cover-screws
  }
  clean lever with tester
  refit lever
  tighten cover-screws to 20 N·m
  clean levr
  clean lver`;
const JOB = job(STEPS, '  time 30 min\n')['job.dowel']!;
const DEMO = resolve(import.meta.dirname, '../../../procedures/tarnbrook');
const T40 = {
  'tarnbrook-t40.dowel': readFileSync(resolve(DEMO, 'tarnbrook-t40.dowel'), 'utf8'),
  'valve-plate.dowel': readFileSync(resolve(DEMO, 'valve-plate.dowel'), 'utf8'),
};

let press: Editor;
let demo: Editor;
beforeAll(async () => {
  press = await editor({ 'press.dowel': PRESS, 'job.dowel': JOB });
  demo = await editor(T40);
});
afterAll(async () => {
  await press.close();
  await demo.close();
});

const doc = (one: Editor, name: string) => ({ textDocument: { uri: one.uri(name) } });
const at = (one: Editor, name: string, piece: string) => ({
  uri: one.uri(name),
  position: one.at(name, piece),
});

describe('panels', () => {
  it('shows the state as a tree, with the steps that made it so', async () => {
    const tree = await press.ask<StateTree>('dowel/state', at(press, 'job.dowel', 'clean lever with'));
    expect(tree.groups.map(({ state, things }) => `${state}: ${things.map(({ name }) => name)}`)).toEqual([
      'off: lever',
      'out: cover-screws',
    ]);
    const [lever] = tree.groups[0]!.things;
    expect(lever).toMatchObject({
      title: 'lever',
      type: 'part',
      since: {
        uri: press.uri('job.dowel'),
        range: { start: press.at('job.dowel', 'remove lever') },
        text: 'remove lever',
      },
      declared: { uri: press.uri('press.dowel'), range: { start: press.at('press.dowel', 'lever "lever"') } },
    });
    expect(await press.ask('dowel/state', at(press, 'press.dowel', 'lever'))).toBeNull();
  });

  it('gives the page, the chart and the map', async () => {
    const place = at(demo, 'valve-plate.dowel', 'task strip');
    const preview = await demo.ask<{ html: string; title: string }>('dowel/preview', place);
    expect(preview.title).toBe('Renew the valve plate');
    expect(preview.html).toMatch(/^<!doctype html>/i);
    const chart = await demo.ask<{ svg: string; title: string }>('dowel/chart', place);
    expect(chart.svg).toMatch(/^<svg[\s\S]*<\/svg>$/);
    const map = await demo.ask<{ svg: string; title: string }>('dowel/map', place);
    expect(map.title).toContain('Tarnbrook T40');
    expect(map.svg).toContain('cylinder head');
    expect(await demo.ask('dowel/preview', at(demo, 'tarnbrook-t40.dowel', 'part'))).toBeNull();
  });
});

describe('a new procedure', () => {
  it('is offered for every part that comes off, and written for one', async () => {
    const machines = await demo.ask<MachineParts[]>('dowel/parts', null);
    expect(machines.map(({ machine, uri }) => [machine, uri])).toEqual([
      ['tarnbrook-t40', demo.uri('tarnbrook-t40.dowel')],
    ]);
    const { parts } = machines[0]!;
    const declared = [...T40['tarnbrook-t40.dowel'].matchAll(/^ *part ([\w-]+)(?!.*\bfixed\b)/gm)].map(
      ([, name]) => name,
    );
    expect(parts.map(({ name }) => name).sort()).toEqual(declared.sort());
    const asked = {
      uri: demo.uri('tarnbrook-t40.dowel'),
      machine: 'tarnbrook-t40',
      part: parts[0]!.name,
      target: demo.uri('jobs/new.dowel'),
    };
    const { text } = await demo.ask<RebuildAnswer>('dowel/rebuild', asked);
    expect(text).toContain('use "../tarnbrook-t40.dowel"');
    expect(text).toContain(`procedure renew-${parts[0]!.name} `);
    expect(await demo.ask('dowel/rebuild', { ...asked, machine: 'gone' })).toEqual({
      reason: expect.stringContaining('`gone`'),
    });
  });
});

describe('beside the lines', () => {
  it('lenses that open the state', async () => {
    await press.diagnostics('job.dowel');
    const lenses = await press.ask<CodeLens[]>('textDocument/codeLens', doc(press, 'job.dowel'));
    const state = lenses.find(({ command }) => command?.title.endsWith('after this task'))!;
    expect(state.command).toMatchObject({
      title: '2 things off or open after this task',
      command: 'dowel.showState',
    });
    const [uri, position] = state.command!.arguments!;
    const tree = await press.ask<StateTree>('dowel/state', { uri, position });
    expect(tree.groups.flatMap(({ things }) => things.map(({ name }) => name))).toEqual([
      'lever',
      'cover-screws',
    ]);
  });

  it('hints, which can be switched off', async () => {
    const range = { start: { line: 0, character: 0 }, end: { line: 99, character: 0 } };
    const hints = await press.ask<InlayHint[]>('textDocument/inlayHint', {
      ...doc(press, 'job.dowel'),
      range,
    });
    expect(hints.map(({ label }) => label)).toEqual(expect.arrayContaining(['×4', '2 off or open']));
    const quiet = await editor(
      { 'press.dowel': PRESS, 'job.dowel': JOB },
      {},
      { inlayHints: false, codeLens: false },
    );
    expect(await quiet.ask('textDocument/inlayHint', { ...doc(quiet, 'job.dowel'), range })).toEqual([]);
    expect(await quiet.ask('textDocument/codeLens', doc(quiet, 'job.dowel'))).toEqual([]);
    await quiet.close();
  });

  it('follow the settings while the server runs, sent or asked for', async () => {
    const range = { start: { line: 0, character: 0 }, end: { line: 99, character: 0 } };
    const can = { refreshSupport: true };
    for (const asks of [false, true]) {
      let refreshed = 0;
      const now: { inlayHints: unknown; codeLens: boolean } = { inlayHints: true, codeLens: true };
      const one = await editor(
        { 'press.dowel': PRESS, 'job.dowel': JOB },
        { workspace: { configuration: asks, inlayHint: can, codeLens: can } },
      );
      one.client.onRequest('workspace/configuration', () => [now]);
      for (const what of ['inlayHint', 'codeLens'])
        one.client.onRequest(`workspace/${what}/refresh`, () => {
          refreshed++;
          return null;
        });
      const told = async () => {
        const before = refreshed;
        await one.client.sendNotification('workspace/didChangeConfiguration', {
          settings: asks ? null : { dowel: now },
        });
        await expect.poll(() => refreshed, { timeout: 30_000 }).toBe(before + 2);
        const hints = await one.ask<InlayHint[]>('textDocument/inlayHint', {
          ...doc(one, 'job.dowel'),
          range,
        });
        const above = await one.ask<CodeLens[]>('textDocument/codeLens', doc(one, 'job.dowel'));
        return { hints: hints.map(({ label }) => label), lenses: above.length > 0 };
      };
      Object.assign(now, { inlayHints: { count: false }, codeLens: false });
      const fewer = await told();
      expect(fewer.hints).not.toContain('×4');
      expect(fewer.hints).toContain('2 off or open');
      expect(fewer.lenses).toBe(false);
      Object.assign(now, { inlayHints: {}, codeLens: true });
      expect(await told()).toEqual({ hints: expect.arrayContaining(['×4']), lenses: true });
      await one.close();
    }
  });

  it('the form of a verb', async () => {
    const help = await press.ask<SignatureHelp>('textDocument/signatureHelp', {
      ...doc(press, 'job.dowel'),
      position: press.at('job.dowel', 'cover-screws to'),
    });
    expect(help.signatures[0]!.label).toMatch(/^tighten FASTENER/);
  });
});

describe('fixing and rewriting', () => {
  const actions = (one: Editor, name: string, piece: string, only?: string[], to = 0) => {
    const start = one.at(name, piece);
    return one.ask<CodeAction[]>('textDocument/codeAction', {
      ...doc(one, name),
      range: { start, end: { line: start.line + to, character: start.character } },
      context: { diagnostics: [], ...(only ? { only } : {}) },
    });
  };

  it('takes the declared value', async () => {
    await press.diagnostics('job.dowel', (all) => all.some(({ code }) => code === 'torque-differs'));
    const found = await actions(press, 'job.dowel', '20 N·m', ['quickfix']);
    const fix = found.find(({ title }) => title === 'Write 9 N·m, as declared')!;
    expect(changed(press, fix.edit!)['job.dowel']).toContain('to 9 N·m\n');
    expect(found.some(({ title }) => title.startsWith('Hold `torque-differs` back here'))).toBe(true);
  });

  it('mends all of a kind, and all that is certain', async () => {
    const found = await actions(press, 'job.dowel', 'levr', ['quickfix']);
    expect(found.map(({ title }) => title)).toContain('Mend all 2 of `unknown-name`');
    const [all] = await actions(press, 'job.dowel', 'levr', ['source.fixAll']);
    expect(changed(press, all!.edit!)['job.dowel']).toContain('  clean lever\n  clean lever\n');
  });

  it('offers them at every end of what is marked, in a text that nobody asked about yet', async () => {
    // An editor that asks for findings itself: it may well ask for fixes before.
    const one = await editor(
      { 'press.dowel': PRESS, 'job.dowel': JOB },
      { textDocument: { diagnostic: {} } },
    );
    const text = JOB.replace('clean levr', 'clean  levr');
    const titles = async (from: number, to: number) => {
      const { line, character } = positionOf(
        one.texts.get('job.dowel')!,
        one.texts.get('job.dowel')!.indexOf('levr'),
      );
      const fixes = await one.ask<CodeAction[]>('textDocument/codeAction', {
        ...doc(one, 'job.dowel'),
        range: { start: { line, character: character + from }, end: { line, character: character + to } },
        context: { diagnostics: [], only: ['quickfix'] },
      });
      return fixes.map(({ title }) => title);
    };
    const whole = await titles(0, 4);
    expect(whole[0]).toMatch(/lever/);
    for (const at of [0, 2, 4]) expect(await titles(at, at)).toEqual(whole);
    await one.change('job.dowel', text);
    for (const [from, to] of [
      [0, 4],
      [0, 0],
      [4, 4],
    ] as const)
      expect(await titles(from, to)).toEqual(whole);
    expect(await titles(-2, -2)).toEqual([]);
    await one.close();
  });

  it('tries nothing twice: an editor that gave an answer up has it at once when it asks again', async () => {
    const check = vi.spyOn(Trial.prototype, 'check');
    onTestFinished(() => check.mockRestore());
    const titles = async () =>
      (await actions(press, 'job.dowel', 'tighten cover-screws', undefined, 1)).map(({ title }) => title);
    await press.change('job.dowel', `${press.texts.get('job.dowel')!}// Once more.\n`);
    const first = await titles();
    expect(first.length).toBeGreaterThan(1);
    expect(check.mock.calls.length).toBeGreaterThan(0);
    expect(new Set(check.mock.calls.map(([text]) => text)).size).toBeGreaterThan(1);
    check.mockClear();
    expect(await titles()).toEqual(first);
    expect(check).not.toHaveBeenCalled();
  });

  it('converts a unit', async () => {
    const found = await actions(press, 'job.dowel', '20 N·m', ['refactor.rewrite']);
    expect(found.map(({ title }) => title)).toEqual([
      expect.stringMatching(/^Write 1[45].* lbf·ft for 20 N·m$/),
      expect.stringMatching(/^Add 1[45].* lbf·ft in brackets$/),
    ]);
  });

  it('writes how a part comes off and goes back', async () => {
    const found = await actions(press, 'press.dowel', 'guides "guides"', ['refactor']);
    const rebuild = found.find(({ title }) => title === 'Write the strip-down and rebuild of the guides')!;
    const text = changed(press, rebuild.edit!)['press.dowel']!;
    expect(text).toContain('procedure renew-guides');
    expect(text).toContain('    unbolt cover\n    remove guides\n');
  });

  it('makes steps a task', async () => {
    const found = await actions(press, 'job.dowel', 'clean lever with', ['refactor.extract'], 1);
    const task = found.find(({ title }) => title === 'Make these steps a task')!;
    expect(changed(press, task.edit!)['job.dowel']).toContain(
      'task new-task "New task" {\n    clean lever with tester\n',
    );
  });
});

describe('laying out', () => {
  it('a line when it is finished, and lines that are selected', async () => {
    const text = 'procedure p "P" for m {\n      remove   lever\n   refit    lever\n}\n';
    const one = await editor({ 'a.dowel': text });
    const typed = await one.ask<TextEdit[]>('textDocument/onTypeFormatting', {
      ...doc(one, 'a.dowel'),
      position: { line: 2, character: 0 },
      ch: '\n',
      options: { tabSize: 2, insertSpaces: true },
    });
    expect(edited(text, typed).split('\n')[1]).toBe('  remove lever');
    expect(edited(text, typed).split('\n')[2]).toBe('   refit    lever');
    const range = { start: { line: 2, character: 0 }, end: { line: 2, character: 9 } };
    const chosen = await one.ask<TextEdit[]>('textDocument/rangeFormatting', {
      ...doc(one, 'a.dowel'),
      range,
      options: { tabSize: 2, insertSpaces: true },
    });
    expect(edited(text, chosen).split('\n')[2]).toBe('  refit lever');
    await one.close();
  });
});
