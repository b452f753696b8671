/** Where a text could be read in two ways, the reading that is taken. Each line is a decision of the language. */
import { describe, expect, it } from 'vitest';
import { parse } from '../../../grammar/parser/parse.ts';
import type { Action, Declaration, Machine, Procedure } from '../../../grammar/syntax/tree.ts';
import { actionOf, statementsOf } from '../../support/trees.ts';

function declaration(text: string): Declaration {
  const parsed = parse(text);
  expect(parsed.problems).toEqual([]);
  return parsed.tree.items[0] as Declaration;
}

const names = (refs: { name: { text: string } }[]) => refs.map((ref) => ref.name.text);

describe('units', () => {
  it('`in` right after a number is the inch', () => {
    expect(actionOf('adjust gap to 0.02 in').tails).toMatchObject([
      { quantity: { amounts: [{ unit: { text: 'in' } }] } },
    ]);
  });

  it('but `in order`, `in reverse order` and `in turn` after a number are the order', () => {
    for (const order of ['in order across', 'in reverse order', 'in turn']) {
      expect(actionOf(`tighten nuts stage 2 ${order}`).tails.map((tail) => tail.tail)).toEqual([
        'stage',
        'in order',
      ]);
    }
  });

  it('a unit stands on the line of its number', () => {
    expect(declaration('part p item 7\n  in mains').clauses.map((clause) => clause.clause)).toEqual([
      'item',
      'in',
    ]);
  });

  it('a sum has a unit with every number', () => {
    expect(actionOf('wait 1 h 30 min').quantity).toMatchObject({ form: 'sum', amounts: [{}, {}] });
    expect(statementsOf('tighten nuts to 25 N·m 2 times').problems).toEqual([]);
  });

  it('`1 1/2` is one number, `1-8` a thread only behind the word thread', () => {
    expect(actionOf('turn nut 1 1/2 turns').quantity).toMatchObject({ amounts: [{ number: '1 1/2' }] });
    expect(declaration('fastener f thread 1-8').clauses).toMatchObject([{ designation: { text: '1-8' } }]);
    expect(declaration('fastener f thread 1 1/8-7 UNC').clauses).toMatchObject([
      { designation: { text: '1 1/8-7 UNC' } },
    ]);
  });

  it('a minus with a space before it and none behind is a sign', () => {
    expect(declaration('system s temperature -40 °C').clauses).toMatchObject([
      { quantity: { amounts: [{ number: '-40' }] } },
    ]);
    expect(actionOf('record x = a - 2 mm').expression).toMatchObject({ operator: '-' });
  });
});

describe('where statements begin', () => {
  it('`for each` at the start of a line is the loop, `for` anywhere else the tail', () => {
    const { statements, problems } = statementsOf('run engine\n  for 30 min\nfor each n in 1..3 { }');
    expect(problems).toEqual([]);
    expect(statements).toMatchObject([{ kind: 'action', tails: [{ tail: 'for' }] }, { kind: 'for each' }]);
  });

  it('a verb at the start of a line begins an action', () => {
    expect(statementsOf('remove cover\nlock flywheel').statements).toHaveLength(2);
  });

  it('after a comma it is a name', () => {
    expect(names(actionOf('remove cover,\n  lock,\n  seal').objects)).toEqual(['cover', 'lock', 'seal']);
  });

  it('unless a second name follows it: no list has two names side by side', () => {
    const { statements, problems } = statementsOf('remove cover,\nlock flywheel');
    expect(statements).toMatchObject([
      { verb: 'remove' },
      { verb: 'lock', objects: [{ name: { text: 'flywheel' } }] },
    ]);
    expect(problems).toHaveLength(1);
  });

  it('the object of a verb may stand on the next line, if it is no verb', () => {
    expect(names(actionOf('remove\n    cylinder-head').objects)).toEqual(['cylinder-head']);
  });

  it('two statements on a line are fine where a brace parts them', () => {
    expect(statementsOf('when a is b { remove cover } remove seal').problems).toEqual([]);
  });

  it('a word directly before a brace among outcomes is an outcome, even a verb', () => {
    const action = actionOf('check face { clean { } mark { } otherwise { } }');
    expect(action.outcomes.map((outcome) => outcome.word!.text)).toEqual(['clean', 'mark', 'otherwise']);
  });

  it('a kind at the start of a line begins a declaration, elsewhere it is a name', () => {
    const machine = parse('machine m {\n part a on seal\n seal b\n}').tree.items[0] as Machine;
    expect(machine.items).toMatchObject([
      { type: 'part', clauses: [{ refs: [{ name: { text: 'seal' } }] }] },
      { type: 'seal' },
    ]);
  });

  it('`part of` and `part number "…"` are clauses, `part number` without a text declares one', () => {
    expect(
      declaration('part a\n part of pump\n part number "12"').clauses.map((clause) => clause.clause),
    ).toEqual(['part of', 'part number']);
    expect(declaration('part number on base').name!.text).toBe('number');
  });

  it('a clause word at the start of a line begins a clause, after a clause word on its line it is a name', () => {
    expect(declaration('part a on thread\n under mass').clauses).toMatchObject([
      { clause: 'on', refs: [{ name: { text: 'thread' } }] },
      { clause: 'under', refs: [{ name: { text: 'mass' } }] },
    ]);
    const parsed = parse('part a on\n under b');
    expect(parsed.problems).toHaveLength(1);
    expect(parsed.tree.items[0]).toMatchObject({
      clauses: [{ clause: 'on', refs: [] }, { clause: 'under' }],
    });
  });
});

describe('lists and tails', () => {
  it('`and` joins the last two objects and says that they are done together', () => {
    expect(actionOf('remove a, b')).toMatchObject({ together: false });
    expect(actionOf('remove a and b')).toMatchObject({ together: true });
    expect(names(actionOf('remove a, b, and c').objects)).toEqual(['a', 'b', 'c']);
  });

  it('`and discard` is a tail, also behind a list', () => {
    expect(actionOf('remove a, b and discard')).toMatchObject({
      together: false,
      tails: [{ tail: 'and discard' }],
    });
  });

  it('`with` behind `holding` says what it is held with; `with 2 people` does not', () => {
    expect(actionOf('loosen cap holding drum with strap').tails).toMatchObject([
      { tail: 'holding', with: [{ name: { text: 'strap' } }] },
    ]);
    expect(actionOf('loosen cap holding drum with 2 people').tails).toMatchObject([
      { tail: 'holding' },
      { tail: 'with', people: 2 },
    ]);
  });

  it('texts in a row are one text, so the sentence of a step stands before `until`, `expect` and `picture`', () => {
    expect(actionOf('remove cover "Mind the"\n  "spring."').text!.value).toBe('Mind the spring.');
    expect(actionOf('turn hub "Slowly." until "it binds"')).toMatchObject({
      text: { value: 'Slowly.' },
      tails: [{ text: { value: 'it binds' } }],
    });
    expect(actionOf('remove cover picture "a.jpg" "The cover" "from below"').tails).toMatchObject([
      { file: { value: 'a.jpg' }, shows: { value: 'The cover from below' } },
    ]);
  });

  it('everyday words are tails only with what belongs to them', () => {
    expect(names(actionOf('clean stage, pass, picture').objects)).toEqual(['stage', 'pass', 'picture']);
    expect(names(actionOf('clean picture').objects)).toEqual(['picture']);
    expect(actionOf('tighten nuts stage 2').tails).toMatchObject([{ tail: 'stage' }]);
  });

  it('`new` before a name is a new one; `kit` alone is a name', () => {
    expect(actionOf('fit new seal')).toMatchObject({ fresh: 'new' });
    expect(names(actionOf('fit kit').objects)).toEqual(['kit']);
    expect(actionOf('fit kit seals')).toMatchObject({ fresh: 'kit' });
  });

  it('verbs of two words may be parted by what is acted on', () => {
    expect(actionOf('let cylinder-head cool')).toMatchObject({ verb: 'let cool' });
    expect(actionOf('switch pump off')).toMatchObject({ verb: 'switch off' });
    expect(actionOf('move bracket to new pump')).toMatchObject({ verb: 'move' });
  });

  it('what is measured comes before `of`, `between` or `=`; what it is measured on is the object', () => {
    const between = actionOf('measure gap between impeller and plate as g');
    expect(between).toMatchObject({ topic: { text: 'gap' }, together: true });
    expect(names(between.objects)).toEqual(['impeller', 'plate']);
    expect(between.tails).toMatchObject([{ tail: 'between', refs: [] }, { tail: 'as' }]);
    expect(names(actionOf('measure warp of head').objects)).toEqual(['head']);
    expect(names(actionOf('choose shims from shim-table by total').objects)).toEqual(['shims']);
    const computed = actionOf('record total = gap + 0.2 mm');
    expect(computed.topic!.text).toBe('total');
  });

  it('`not over` is the clause of a declaration and the tail of an action', () => {
    expect(declaration('system s not over 10 bar').clauses).toMatchObject([{ clause: 'not over' }]);
    expect(actionOf('inflate tyre not over 3 bar').tails).toMatchObject([{ tail: 'not over' }]);
  });

  it('behind `holds 2 L` a clause word begins the next clause, another word is the fluid', () => {
    const clauses = (text: string) => declaration(text).clauses.map((clause) => clause.clause);
    expect(clauses('system s holds 2 L pressure 5 bar')).toEqual(['holds', 'pressure']);
    expect(clauses('system s holds pressure')).toEqual(['holds']);
    expect(declaration('system s holds 2 L oil').clauses).toMatchObject([
      { fluid: { name: { text: 'oil' } } },
    ]);
  });

  it('`x2` is a count, `x` without a number a name', () => {
    expect(actionOf('fit washer x2').objects[0]).toMatchObject({ count: 2 });
    expect(names(actionOf('fit x').objects)).toEqual(['x']);
  });
});

describe('claims and conditions', () => {
  it('a name in a list of exceptions that has a state of its own begins the next claim', () => {
    const procedure = parse('procedure p ends with all of hub off except spindle, cap, cover fitted { }').tree
      .items[0] as Procedure;
    expect(procedure.headers[0]).toMatchObject({
      claims: [
        { scope: 'all of', except: [{}, {}] },
        { refs: [{ name: { text: 'cover' } }], state: { text: 'fitted' } },
      ],
    });
  });

  it('`proved safe` is the state `safe`', () => {
    expect(parse('procedure p starts with mains proved safe { }').tree.items[0]).toMatchObject({
      headers: [{ claims: [{ state: { text: 'safe' } }] }],
    });
  });

  it('`is` asks an axis, a bare state word the state', () => {
    const { statements } = statementsOf('if servo is off { }\nif servo off { }');
    expect(statements).toMatchObject([{ condition: { kind: 'axis' } }, { condition: { kind: 'state' } }]);
  });

  it('in a rule a verb after the scope is an action, unless a state ends the sentence', () => {
    const { tree, problems } = parse(
      'rule r {\n before loosen cap require cover off\n while fit fitted never run\n}',
    );
    expect(problems).toEqual([]);
    expect(tree.items[0]).toMatchObject({
      bodies: [
        { trigger: { kind: 'event', verb: { text: 'loosen' } } },
        { trigger: { kind: 'state', selectors: [{ ref: { name: { text: 'fit' } } }] } },
      ],
    });
  });
});

describe('text', () => {
  it('has escapes undone and names in braces noted', () => {
    const text = (
      statementsOf('note "A \\"dry\\" joint: {limit} and \\{no}"').statements[0] as never as {
        text: Action['text'];
      }
    ).text!;
    expect(text.value).toBe('A "dry" joint: {limit} and {no}');
    expect(text.holes.map((hole) => hole.text)).toEqual(['limit']);
  });
});

describe('hazards', () => {
  const clausesOf = (text: string) => declaration(text).clauses;

  it('say how bad they are after their words, before or after `when`', () => {
    expect(clausesOf('system s hazard live, hot can kill when opening  live 400 V')).toMatchObject([
      {
        hazards: [{ text: 'live' }, { text: 'hot' }],
        harm: { text: 'can kill' },
        when: [{ text: 'opening' }],
      },
      { clause: 'live' },
    ]);
    expect(clausesOf('part p hazard sharp when fitting can hurt  on base')).toMatchObject([
      { harm: { text: 'can hurt' }, when: [{ text: 'fitting' }] },
      { clause: 'on' },
    ]);
  });

  it('`can` alone is a name like any other', () => {
    expect(clausesOf('part can on can hazard hot')).toMatchObject([
      { refs: [{ name: { text: 'can' } }] },
      { hazards: [{ text: 'hot' }] },
    ]);
    expect(clausesOf('part p hazard hot')[0]).not.toHaveProperty('harm');
  });
});
