/**
 * Each rule of the layout by a small text before and after. The layout is the project's own, stated in words in
 * grammar/format/format.ts; there is no source outside for it.
 */
import { describe, expect, test } from 'vitest';
import { expectLayoutHolds } from './holds.ts';

/** Both texts are written with the margin of the test's own code, which is taken away. */
function expectLayout(typed: string, laidOut: string): void {
  expect(expectLayoutHolds(flush(typed))).toBe(flush(laidOut));
}

function flush(text: string): string {
  const lines = text.replace(/^\n/, '').replace(/\n *$/, '\n').split('\n');
  const margin = Math.min(...lines.filter((line) => line.trim() !== '').map((line) => line.search(/\S/)));
  return lines.map((line) => line.slice(margin)).join('\n');
}

describe('blanks', () => {
  test('two spaces for each brace, one statement a line', () => {
    expectLayout(
      `
      procedure p "P" for m { task a "A" { remove b
      remove c } }
      `,
      `
      procedure p "P" for m {
        task a "A" {
          remove b
          remove c
        }
      }
      `,
    );
  });

  test('one space between words and behind commas, none before commas and colons', () => {
    expectLayout(
      `
      machine m {
        variant   supply :single ,   double
        coupled a ,b,c   while   a  fitted
      }
      `,
      `
      machine m {
        variant supply: single, double
        coupled a, b, c while a fitted
      }
      `,
    );
  });

  test('signs stand free, ranges and brackets close up, units stay as typed', () => {
    expectLayout(
      `
      machine m {
        value a = ( b+2 mm )/3
        value c=b -d
        tool t range 5 .. 60 N·m
        fastener f torque 25±3 N·m
        fastener g torque 80 lbf·ft(110N·m)
        fastener h torque 25 +- 3 N.m
        fastener i plan { 90°; 90 ° }
      }
      `,
      `
      machine m {
        value a = (b + 2 mm) / 3
        value c = b - d
        tool t range 5..60 N·m
        fastener f torque 25 ± 3 N·m
        fastener g torque 80 lbf·ft (110N·m)
        fastener h torque 25 +- 3 N.m
        fastener i plan { 90°; 90 ° }
      }
      `,
    );
  });

  test('quoted text is not touched', () => {
    expectLayout(
      `
      procedure p   "a  ,b{ c }  "{
        stop   "x  //  y ;  z"   "  again"
      }
      `,
      `
      procedure p "a  ,b{ c }  " {
        stop "x  //  y ;  z" "  again"
      }
      `,
    );
  });

  test('blanks that hold two words apart stay on their line', () => {
    // With one space, "in" would begin "in order" and would be the inch no longer.
    const far = 'in                           order';
    expectLayout(
      `
      machine m {
          fastener f length 5 ${far} across
          part   b
      }
      `,
      `
      machine m {
          fastener f length 5 ${far} across
        part b
      }
      `,
    );
  });

  test('an empty text stays empty, blanks alone are dropped', () => {
    expect(expectLayoutHolds('')).toBe('');
    expect(expectLayoutHolds('\uFEFF \r\n\t\n')).toBe('');
  });
});

describe('empty lines', () => {
  test('none inside braces at the ends, one at most between statements, none inside a statement', () => {
    expectLayout(
      `
      procedure p {


        remove a



        remove b
        remove c with d

          "Carefully."

      }
      `,
      `
      procedure p {
        remove a

        remove b
        remove c with d
          "Carefully."
      }
      `,
    );
  });

  test('one around machines, procedures and tasks; lists of uses and of shared things stay close', () => {
    expectLayout(
      `
      use "a.dowel"
      use "b.dowel"
      fluid oil
      fluid water
      machine m { part a }
      procedure p {
        remove a
        task b { remove c }
        task d { remove e }
        remove f
      }
      procedure q { remove a }
      `,
      `
      use "a.dowel"
      use "b.dowel"

      fluid oil
      fluid water

      machine m {
        part a
      }

      procedure p {
        remove a

        task b { remove c }

        task d { remove e }

        remove f
      }

      procedure q {
        remove a
      }
      `,
    );
  });
});

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

describe('comments', () => {
  test('keep their line, and stand in the column of what follows', () => {
    expectLayout(
      `
      // of the file


          // of the machine
      machine m {// behind the brace

      // of the part
          part a// behind the part
              on b // behind the clause
            // of the next clause
              fixed

        // at the end

      }
      // after all
      `,
      `
      // of the file

      // of the machine
      machine m {  // behind the brace
        // of the part
        part a  // behind the part
          on b  // behind the clause
          // of the next clause
          fixed

        // at the end
      }
      // after all
      `,
    );
  });

  test('keep apart what would stand together', () => {
    expectLayout(
      `
      procedure p {
        task a // why
        {
          when b is c { // first
            remove d } // second
          otherwise { remove e /* no comment */ }
        }
      }
      `.replace(' /* no comment */', ''),
      `
      procedure p {
        task a  // why
        {
          when b is c {  // first
            remove d
          }  // second
          otherwise {
            remove e
          }
        }
      }
      `,
    );
  });

  test('an empty line before a task goes before its comment', () => {
    expectLayout(
      `
      procedure p {
        task a { remove b }
        // about c
        task c { remove d }
        // about e

        task e { remove f } // done
        // the end
      }
      `,
      `
      procedure p {
        task a { remove b }

        // about c
        task c { remove d }
        // about e

        task e { remove f }  // done
        // the end
      }
      `,
    );
  });

  test('in an otherwise empty block they open it', () => {
    expectLayout(
      `
      procedure p {
        task a { // later
        }
        task b {
      // later still
      } }
      `,
      `
      procedure p {
        task a {  // later
        }

        task b {
          // later still
        }
      }
      `,
    );
  });
});

describe('text that could not be read', () => {
  test('a line with a slip stays byte for byte, the others are laid out', () => {
    expectLayout(
      `
      procedure p {
      remov   a ,b
      remove   c ,d
      wait   10
          task e {
        remove   f
      } }
      `,
      `
      procedure p {
      remov   a ,b
        remove c, d
      wait   10

        task e {
          remove f
        }
      }
      `,
    );
  });

  test('a declaration or head with a slip stays as a whole', () => {
    expectLayout(
      `
      machine m {
         part a
             on   b
           thikness   3 mm
             under   c
         part   d
      }
      procedure p
           for   m
           zzz   1
      {
           remove   a
      }
      `,
      `
      machine m {
         part a
             on   b
           thikness   3 mm
             under   c
        part d
      }

      procedure p
           for   m
           zzz   1
      {
        remove a
      }
      `,
    );
  });

  test('with a brace missing the whole item stays, the others are laid out', () => {
    expectLayout(
      `
      machine m {
          part   a
      }
      procedure p {
          task a {
             remove   b
      `,
      `
      machine m {
        part a
      }

      procedure p {
          task a {
             remove   b
      `,
    );
  });

  test('line ends become LF there too, blanks at their ends stay', () => {
    expect(expectLayoutHolds('procedure p {\r\n\tremov  a \t\r\n\tremove  b \t\r\n}\r\n')).toBe(
      'procedure p {\n\tremov  a \t\n  remove b\n}\n',
    );
  });

  test('beyond the problems that the parser lists everything stays', () => {
    const slips = '  remov   a\n'.repeat(120);
    const text = `procedure p {\n remove   a\n${slips} remove   z\n}\n`;
    expect(expectLayoutHolds(text)).toBe(`procedure p {\n  remove a\n${slips} remove   z\n}\n`);
  });
});
