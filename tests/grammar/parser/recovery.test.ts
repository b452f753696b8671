/**
 * Slips as people make them: each gives one problem where it is, and the rest of the file is still read.
 * The places are marked in the texts. Source of the expectations: the description of the language.
 */
import { describe, expect, it } from 'vitest';
import { parse } from '../../../grammar/parser/parse.ts';
import type { SyntaxProblem } from '../../../grammar/syntax/tree.ts';
import { annotated, asLines, unsaid } from '../../support/annotated.ts';
import { outline } from '../../support/trees.ts';

/** Problems exactly as marked; every `part last` and `task last` of the text is in the outline. */
function check(fixture: string): SyntaxProblem[] {
  const { text, marks } = annotated(fixture);
  const { problems, tree } = parse(text);
  expect(asLines(text, problems)).toEqual(asLines(text, marks));
  expect(unsaid(marks, problems)).toEqual([]);
  const wanted = [...text.matchAll(/\b(?:part|task) last\b/g)].map((found) => found[0]);
  expect(outline(tree.items).filter((name) => name.endsWith(' last'))).toEqual(wanted);
  return problems;
}

/** The text after every mend that is offered. */
function mended(fixture: string): string {
  const { text } = annotated(fixture);
  const mends = parse(text).problems.flatMap((problem) => (problem.mend ? [problem.mend] : []));
  mends.sort((a, b) => b.start - a.start);
  return mends.reduce((now, mend) => now.slice(0, mend.start) + mend.text + now.slice(mend.end), text);
}

describe('actions', () => {
  it('unknown verbs, with the nearest one', () => {
    const fixture = `
procedure p {
  removee cover with hoist
  ^^^^^^^ unknown-verb: did you mean “remove”?
  polish cover
  ^^^^^^ unknown-verb: is no verb that a step can begin with.
  Remove cover
  ^^^^^^ unknown-verb: did you mean “remove”?
  lok out disconnector
  ^^^ unknown-verb: did you mean “lock”?
  task last { }
}`;
    check(fixture);
    expect(mended(fixture)).toContain('  remove cover with hoist\n');
  });

  it('a misspelled statement word keeps what is in its block', () => {
    const { text } = annotated('procedure p {\n  tsak strip {\n    remove cover\n  }\n  task last { }\n}');
    const parsed = parse(text);
    expect(parsed.problems).toMatchObject([{ check: 'unknown-verb', mend: { text: 'task' } }]);
    expect(parsed.tree.items[0]).toMatchObject({
      body: { statements: [{ kind: 'broken' }, { verb: 'remove' }, { kind: 'task' }] },
    });
  });

  it('two actions on a line', () => {
    const fixture = `
procedure p {
  remove cover  fit seal
                ^^^ syntax: every action starts on a new line
  task last { }
}`;
    check(fixture);
    expect(parse(mended(fixture)).problems).toEqual([]);
    expect(parse(annotated(fixture).text).tree.items[0]).toMatchObject({
      body: { statements: [{ verb: 'remove' }, { verb: 'fit' }, {}] },
    });
  });

  it('a tail that is misspelled, a name in two words', () => {
    const fixture = `
procedure p {
  remove cover wiht hoist
               ^^^^ syntax: did you mean “with”?
  remove cylinder head
                  ^^^^ syntax: words of one name are joined by hyphens
  task last { }
}`;
    check(fixture);
  });

  it('nothing to act on, and what is missing behind tails', () => {
    check(`
procedure p {
  remove
  ^^^^^^ syntax: does not say what is acted on
  fit new
  ^^^^^^^ syntax: does not say what is acted on
  remove a,
          ^ syntax: A name is missing after “,”
  remove a with
           ^^^^ syntax: A name is missing after “with”
  tighten a to
            ^^ syntax: missing after “to”
  loosen a until
           ^^^^^ syntax: A text in quotation marks is missing after “until”
  measure gap of a as
                   ^^ syntax: The name that the value gets is missing
  prove mains with tester
                   ^^^^^^ syntax: “prove” is not complete without “safe”
  task last { }
}`);
  });

  it('a text by itself, a block by itself', () => {
    check(`
procedure p {
  "Mind the spring."
  ^^^^^^^^^^^^^^^^^^ syntax: a step begins with a verb
  {
  ^ syntax: This block belongs to nothing
    remove cover
  }
  clean cover {
              ^ syntax: No block can stand behind this
    remove cover
  }
  task last { }
}`);
  });

  it('outcomes that are none', () => {
    check(`
procedure p {
  check nuts {
    no leaks { }
    ^^ syntax: several words are joined by hyphens
    remove cover
    ^^^^^^ syntax: stands where an outcome should
  }
  measure gap of a {
    over 3 mm
           ^^ brace-missing: The outcome has no block
  }
  tighten nuts { tight { } }
               ^ syntax: “tighten” has no outcomes
  task last { }
}`);
  });

  it('a declaration among the steps', () => {
    check(`
procedure p {
  remove cover
  part seal on cover
  ^^^^ syntax: A part is declared in a machine
  task last { }
}`);
  });
});

describe('statements', () => {
  it('what they lack', () => {
    check(`
procedure p {
  task
  ^^^^ syntax: The name of the task is missing
  step "Alone"
       ^^^^^^^ brace-missing: The block of the step is missing
  if { }
  ^^ syntax: A condition is missing after “if”
  when supply { }
       ^^^^^^ syntax: says no state and no value
  when supply is { }
              ^^ syntax: A value is missing after “is”
  repeat { }
  ^^^^^^ syntax: does not say until when
  for each cylinder { }
           ^^^^^^^^ syntax: What “for each” goes through is missing
  warning pressure
          ^^^^^^^^ syntax: A text in quotation marks is missing after “warning”
  choice place
         ^^^^^ syntax: What can be chosen is missing
  allow still-held
        ^^^^^^^^^^ syntax: The reason is missing
  reverse
  ^^^^^^^ syntax: The task is missing after “reverse”
  do
  ^^ syntax: The procedure or task is missing after “do”
  stop
  ^^^^ syntax: A text in quotation marks is missing after “stop”
  value limit 3 mm
        ^^^^^ syntax: A value is given after “=”
  task last { }
}`);
  });

  it('words that do not belong in front of a block', () => {
    check(`
procedure p {
  task strip "Strip" now {
                     ^^^ syntax: the block of the task should begin
    remove cover
  }
  task last { }
}`);
  });
});

describe('machines', () => {
  it('clauses that do not exist, are misspelled or misplaced', () => {
    const fixture = `
machine m {
  part a colour red on base
         ^^^^^^ syntax: “colour” begins no clause of the part “a”.
  part b undr cover  mass 3 kg
         ^^^^ syntax: did you mean “under”?
  seal c torque 25 N·m
         ^^^^^^ clause-misplaced: A seal has no clause “torque”; it can stand with a fastener
  pert d on base
  ^^^^ syntax: did you mean “part”?
  remove d
  ^^^^^^ syntax: actions stand in a procedure
  part last
}`;
    check(fixture);
    expect(mended(fixture)).toContain('part b under cover');
    expect(parse(annotated(fixture).text).tree.items[0]).toMatchObject({
      items: [
        { clauses: [{ clause: 'on' }] },
        { clauses: [{ clause: 'mass' }] },
        { clauses: [{ clause: 'torque' }] },
        {},
      ],
    });
  });

  it('two declarations on a line', () => {
    const fixture = `
machine m {
  part a on base part b on base
                 ^^^^ syntax: must start on a new line
  part last
}`;
    check(fixture);
    expect(parse(mended(fixture)).problems).toEqual([]);
  });

  it('what clauses and items lack', () => {
    check(`
machine m {
  part
  ^^^^ syntax: The name of the part is missing
  part a on
         ^^ syntax: A name is missing after “on”
  part b goes
         ^^^^ syntax: A text in quotation marks is missing after “goes”
  part c mass
         ^^^^ syntax: A number is missing after “mass”
  part d hazard
         ^^^^^^ syntax: The kind of hazard is missing
  part e only
         ^^^^ syntax: A condition is missing after “only”
  fastener f thread
             ^^^^^^ syntax: The designation is missing after “thread”
  fastener g layout
             ^^^^^^ syntax: The layout is missing after “layout”
  fastener h layout 2 rows
                      ^^^^ syntax: The rows of the layout are incomplete
  fastener i order
             ^^^^^ syntax: The order is missing
  fastener j plan
             ^^^^ syntax: The stages are missing after “plan”
  fastener k torque at least
                    ^^^^^^^^ syntax: A number is missing after “at least”
  variant supply
          ^^^^^^ syntax: The values of the variant are missing
  never
  ^^^^^ syntax: A condition is missing after “never”
  table shims { up to 0.3 mm }
                          ^^ syntax: What the row gives is missing
  rule r { before loosen cap }
                         ^^^ syntax: does not say what it requires
  rule s { require }
           ^^^^^^^ syntax: An action or a state is missing after “require”
  rule t { require cover }
                   ^^^^^ syntax: neither an action nor a state
  part last
}`);
  });

  it('stages of a plan', () => {
    check(`
machine m {
  fastener a plan { 8 N·m 16 N·m, 25 N·m }
                          ^^ syntax: parted by semicolons
                                ^ syntax: is not a stage
  fastener b plan { hard; 8 N·m }
                    ^^^^ syntax: “hard” is not a stage
  part last
}`);
  });
});

describe('quantities', () => {
  it('a unit that is missing or unknown', () => {
    check(`
machine m {
  part a mass 7
              ^ unit-missing: The number 7 for “mass” has no unit; usual units are kg or lb.
  fastener b torque 25
                    ^^ unit-missing: usual units are N·m or lbf·ft
  fastener c torque 5..60
                    ^^^^^ unit-missing: The number 5..60
  fastener d torque 25 Nmx  on base
                       ^^^ unit-missing: “Nmx” is not a unit
  fastener e plan { 8; 16 N·m }
                    ^ unit-missing: for a stage
  fastener f layout at 0 0, 50 0
                               ^ unit-missing: The places of the layout have no unit
  system s holds 1.2 oil
                 ^^^ unit-missing: usual units are L or qt
  part last
}
procedure p {
  wait 30
       ^^ unit-missing: usual units are min, h or s
  tighten nuts to 25
                  ^^ unit-missing: The number 25 for “to”
  tighten nuts pass 30
                    ^^ unit-missing: usual units are %
  turn flywheel 2
                ^ unit-missing: usual units are turns, ° or mm
  task last { }
}`);
  });

  it('a decimal comma, with the point to put in its place', () => {
    const fixture = `
machine m {
  fastener a torque 25,5 N·m
                    ^^^^ decimal-comma: decimals are written with a point
  fastener b nut factor 0,15
                        ^^^^ decimal-comma
  part last
}`;
    check(fixture);
    expect(parse(mended(fixture)).problems).toEqual([]);
    expect(parse(annotated(fixture).text).tree.items[0]).toMatchObject({
      items: [{ clauses: [{ quantity: { amounts: [{ number: '25.5', unit: { text: 'N·m' } }] } }] }, {}, {}],
    });
  });

  it('a comma for thousands is asked about, not mended', () => {
    const [problem] = check(`
procedure p {
  run engine for 1,000 h
                 ^^^^^ decimal-comma: has a comma
}`);
    expect(problem).toMatchObject({ example: '1000 or 1.000' });
    expect(problem).not.toHaveProperty('mend');
  });

  it('other slips of numbers', () => {
    const fixture = `
machine m {
  part a mass .5 kg
              ^^ syntax: a zero belongs before it
  fastener b torque 5...60 N·m
                     ^^^ syntax: two points
  fastener c torque 25 ± N·m
                       ^ syntax: The tolerance is missing
  fastener d torque 5.. N·m
                     ^^ syntax: The second number of the range is missing
  part last
}`;
    check(fixture);
  });
});

describe('texts', () => {
  it('without an end stop at the end of the line', () => {
    const fixture = `
procedure p {
  remove cover "Mind the spring.
               ^^^^^^^^^^^^^^^^^ text-not-closed
  step "Take it off {
       ^^^^^^^^^^^^ text-not-closed
    remove seal
  }
  task last { }
}`;
    check(fixture);
    expect(parse(mended(fixture)).problems).toEqual([]);
  });

  it('in curly quotation marks are read', () => {
    const fixture = `
procedure p {
  remove cover “Mind the spring.”
               ^^^^^^^^^^^^^^^^^^ bad-character: straight quotation marks
  task last { }
}`;
    check(fixture);
    expect(parse(mended(fixture)).problems).toEqual([]);
  });
});

describe('characters', () => {
  it('that mean nothing are reported once and left out', () => {
    const fixture = `
procedure p {
  remove [cover]
         ^ bad-character: “[”
               ^ bad-character: “]”
  remove air_cleaner
         ^^^^^^^^^^^ bad-character: joined by hyphens
  task last { }
}`;
    check(fixture);
    expect(mended(fixture)).toContain('remove air-cleaner');
  });

  it('beyond the basic ones: letters are letters, pictures are not', () => {
    const { problems, tree } = parse(
      'machine größe-2 {\n  part 冷却水ポンプ "Pumpe 🔧"\n  part 𝒳-ring\n  part é\u0301\n}',
    );
    expect(problems).toEqual([]);
    expect(outline(tree.items)).toEqual([
      'machine größe-2',
      'part 冷却水ポンプ',
      'part 𝒳-ring',
      'part é\u0301',
    ]);
    const emoji = parse('part cover🔧 on base');
    expect(emoji.problems).toMatchObject([{ check: 'bad-character', start: 10, end: 12 }]);
    expect(emoji.tree.items).toMatchObject([{ name: { text: 'cover' }, clauses: [{ clause: 'on' }] }]);
  });
});

describe('braces', () => {
  it('a closing one that the indentation shows to be missing', () => {
    const fixture = `
procedure p {
  task strip {
             ^ brace-missing: has no closing brace
    remove cover

  task last {
    fit cover
  }
}
machine m { part last }`;
    const [problem] = check(fixture);
    const { text } = annotated(fixture);
    expect(text.slice(problem!.related!.start, problem!.related!.end)).toBe('task');
    expect(parse(mended(fixture)).problems).toEqual([]);
  });

  it('one missing inside: the outer brace shows it', () => {
    check(`
procedure p {
  task strip {
    step "Off" {
               ^ brace-missing
      remove cover
  }
  task last { }
}`);
  });

  it('one missing before the next machine or procedure', () => {
    check(`
machine m {
          ^ brace-missing
  part last
procedure p {
  task last { }
}`);
  });

  it('missing at the end of the text: one problem for all of them', () => {
    const problems = check(`
procedure p {
  task last {
            ^ brace-missing: nor has the block around it
    remove cover`);
    expect(problems[0]!.related).toMatchObject({ message: 'The text ends here.' });
  });

  it('an opening one that is missing', () => {
    const fixture = `
procedure p {
  task strip "Strip"
  ^^^^^^^^^^^^^^^^^^ brace-missing: has no opening brace
    remove cover
  }
  task last { }
}
machine m { part last }`;
    check(fixture);
    expect(parse(mended(fixture)).problems).toEqual([]);
  });

  it('one too many', () => {
    check(`
machine m {
  part a
}
}
^ brace-missing: closes no block
part last`);
  });
});

describe('files', () => {
  it('steps, clauses and texts outside of everything', () => {
    check(`
on cover
^^ syntax: none stands before it
remove cover
^^^^^^ syntax: steps stand in a procedure
"Text"
^^^^^^ syntax: A text stands here by itself
{ a }
^ syntax: This block belongs to nothing
macine m
^^^^^^ syntax: did you mean “machine”?
use
^^^ syntax: The file is missing after “use”
procedure
^^^^^^^^^ syntax: The name of the procedure is missing
procedure q colour red for m { }
            ^^^^^^ syntax: says nothing about a procedure
part last`);
  });
});
