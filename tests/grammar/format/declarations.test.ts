/**
 * The layout of declarations and procedures by a small text before and after. The layout is the project's own, stated in words in
 * grammar/format/format.ts; there is no source outside for it.
 */
import { describe, test } from 'vitest';
import { expectLayout } from './laid-out.ts';

describe('declarations', () => {
  test('on one line: one space before the first clause, two between clauses', () => {
    expectLayout(
      `
      machine m {
        part a "a"   on b held by c x2 fixed
        fastener c "c"  x6 thread M8x1.25 class 8.8
      }
      `,
      `
      machine m {
        part a "a" on b  held by c x2  fixed
        fastener c "c" x6  thread M8x1.25  class 8.8
      }
      `,
    );
  });

  test('written over several lines: a clause a line, the count with the name', () => {
    expectLayout(
      `
      machine m {
        fastener c
          "c"
          x6 thread M8x1.25 class 8.8
        plan {
          8 N·m;
          16 N·m
        }
        kit k "k" contains d, e,
        f
      }
      `,
      `
      machine m {
        fastener c "c" x6
          thread M8x1.25
          class 8.8
          plan { 8 N·m; 16 N·m }
        kit k "k"
          contains d, e,
            f
      }
      `,
    );
  });

  test('up to 100 columns stay on the line, 101 do not', () => {
    const clauses = 'on bbbbbbbbbbbbbbbbbbbb  under cccccccccccccccccccc  held by dddddddddddddddddddd';
    const name = 'a'.repeat(100 - `  part  ${clauses}`.length);
    expectLayout(
      `machine m {\n  part ${name} ${clauses}\n}\n`,
      `machine m {\n  part ${name} ${clauses}\n}\n`,
    );
    const [on, under, held] = clauses.split('  ');
    expectLayout(
      `machine m {\n  part ${name}a ${clauses}\n}\n`,
      `machine m {\n  part ${name}a\n    ${on}\n    ${under}\n    ${held}\n}\n`,
    );
  });

  test('a plan that does not fit, or has its stages parted by lines only, has a stage a line', () => {
    const stage = 'until "it binds and cannot be turned any further by hand" while turning hub';
    expectLayout(
      `
      machine m {
        fastener f plan { ${stage}; back off 1/6 turn }
        fastener g
          plan { 8 N·m
          16 N·m } to yield
      }
      `,
      `
      machine m {
        fastener f
          plan {
            ${stage};
            back off 1/6 turn
          }
        fastener g
          plan {
            8 N·m
            16 N·m
          } to yield
      }
      `,
    );
  });

  test('tables have a row a line, rules of one sentence may stay on theirs', () => {
    expectLayout(
      `
      machine m {
        table t "t" { up to 0.3 mm : thin x2 ; over 0.3 mm: thick }
        rule r "R" { before loosen a require b fitted }
        rule s "S" { before loosen a require b fitted
        after fit c never turn d }
      }
      `,
      `
      machine m {
        table t "t" {
          up to 0.3 mm: thin x2;
          over 0.3 mm: thick
        }
        rule r "R" { before loosen a  require b fitted }
        rule s "S" {
          before loosen a  require b fitted
          after fit c  never turn d
        }
      }
      `,
    );
  });
});

test('a break before a semicolon parts the stages of a plan no more than one behind it', () => {
  expectLayout(
    'machine m {\n  fastener f "f" x2 plan { 15 N·m; loosen\n; 28 N·m }\n}\n',
    'machine m {\n  fastener f "f" x2\n    plan { 15 N·m; loosen; 28 N·m }\n}\n',
  );
});

describe('procedures', () => {
  test('headers on the line of the procedure', () => {
    expectLayout(
      `
      procedure p "P" for m people 2
      {
        remove a
      }
      procedure q elsewhere "chapter 2" ends with supply isolated
      `,
      `
      procedure p "P" for m  people 2 {
        remove a
      }

      procedure q elsewhere "chapter 2"  ends with supply isolated
      `,
    );
  });

  test('headers on lines of their own, grouped as written', () => {
    expectLayout(
      `
      procedure p "P" for m
      people 2 skill "fitter"
      tools a, b,
      c {
        remove a
      }
      `,
      `
      procedure p "P"
        for m
        people 2  skill "fitter"
        tools a, b,
          c
      {
        remove a
      }
      `,
    );
  });

  test('headers that do not fit on their line have one each', () => {
    const skill = `skill "${'s'.repeat(50)}"`;
    const needs = `needs "${'n'.repeat(50)}"`;
    expectLayout(
      `procedure p for m ${skill} ${needs} {\n  remove a\n}\n`,
      `procedure p\n  for m\n  ${skill}\n  ${needs}\n{\n  remove a\n}\n`,
    );
  });

  test('an action keeps the line breaks of its author', () => {
    expectLayout(
      `
      procedure p {
          warning   pressure
        "Air throws grit."
          remove a,
          b
            with c
      }
      `,
      `
      procedure p {
        warning pressure
          "Air throws grit."
        remove a,
          b
          with c
      }
      `,
    );
  });

  test('blocks: empty, short on one line, or one statement a line', () => {
    expectLayout(
      `
      procedure p {
        when a is b {}
        when a is b
        { unbolt c }
        when a is b {
          unbolt c }
        if "x" { unbolt c }
        otherwise { refit c }
        if "y" { unbolt c } otherwise { refit c
        refit d }
        when a is b { remove c
        remove d }
        when a is b { if "x" { remove c } }
      }
      `,
      `
      procedure p {
        when a is b { }
        when a is b { unbolt c }
        when a is b {
          unbolt c
        }
        if "x" { unbolt c } otherwise { refit c }
        if "y" {
          unbolt c
        } otherwise {
          refit c
          refit d
        }
        when a is b {
          remove c
          remove d
        }
        when a is b {
          if "x" { remove c }
        }
      }
      `,
    );
  });

  test('a short block that does not fit is opened', () => {
    const text = `"${'t'.repeat(90)}"`;
    expectLayout(
      `procedure p {\n  when a is b { stop ${text} }\n}\n`,
      `procedure p {\n  when a is b {\n    stop ${text}\n  }\n}\n`,
    );
  });

  test('outcomes have a line each', () => {
    expectLayout(
      `
      procedure p {
        measure gap of a { below 0.3 mm { }  0.3..0.5 mm {} over 0.5 mm { send a for "facing" } }
        inspect a for "cracks" { sound {}
          cracked   { discard a
            fit new a } }
      }
      `,
      `
      procedure p {
        measure gap of a {
          below 0.3 mm { }
          0.3..0.5 mm { }
          over 0.5 mm { send a for "facing" }
        }
        inspect a for "cracks" {
          sound { }
          cracked {
            discard a
            fit new a
          }
        }
      }
      `,
    );
  });
});
