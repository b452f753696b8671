/** How fasteners lie and are tightened: layouts and plans. Also stepping over what cannot be read. */
import { unitByText } from '../quantity/lexical.ts';
import type { Layout, Plan, Ref, Stage } from '../syntax/tree.ts';
import * as T from '../tokens/types.ts';
import { keyOf, nameOf, shown, spanOf } from './base.ts';
import { ConditionRules } from './condition.ts';

export class FasteningRules extends ConditionRules {
  // ------------------------------------------------------------ layout

  /** `2 rows of 3` */
  readonly rows = this.RULE('rows', (): Layout => {
    const first = this.CONSUME(T.NumberToken);
    const layout: Layout = { kind: 'rows', rows: Number(first.image), of: 0, ...spanOf(first) };
    let complete = false;
    this.OPTION({
      GATE: () => this.LA(1).image === 'rows' || this.LA(1).image === 'row',
      DEF: () => {
        this.CONSUME(T.PlainWord);
        this.OPTION1(() => {
          this.CONSUME(T.Of);
          this.OPTION2(() => {
            layout.of = Number(this.CONSUME1(T.NumberToken).image);
            complete = true;
          });
        });
      },
    });
    if (!complete) this.missing('The rows of the layout are incomplete.', 'layout 2 rows of 3');
    layout.end = this.lastEnd();
    return layout;
  });

  readonly circle = this.RULE('circle', (): Layout => {
    return { kind: 'circle', ...spanOf(this.CONSUME(T.Circle)) };
  });

  /** `at 0 0, 50 0, 50 40 mm` */
  readonly places = this.RULE('places', (): Layout => {
    const at = this.CONSUME(T.At);
    const layout: Layout & { kind: 'places' } = { kind: 'places', places: [], ...spanOf(at) };
    this.MANY_SEP({
      SEP: T.Comma,
      DEF: () => {
        const x = keyOf(this.CONSUME(T.NumberToken)).text;
        let y: string | undefined;
        this.OPTION(() => {
          y = keyOf(this.CONSUME1(T.NumberToken)).text;
        });
        this.OPTION1(() => {
          layout.unit = nameOf(this.CONSUME(T.Unit));
        });
        if (y === undefined)
          this.missing(
            'A place of the layout has two numbers, across and along.',
            'layout at 0 0, 50 0, 50 40 mm',
          );
        else layout.places.push({ x, y });
      },
    });
    if (this.RECORDING_PHASE) return layout;
    if (layout.places.length === 0)
      this.missing('The places of the layout are missing.', 'layout at 0 0, 50 0, 50 40 mm');
    else if (!layout.unit) {
      this.missing(
        'The places of the layout have no unit; usual units are mm or in.',
        'layout at 0 0, 50 0, 50 40 mm',
        'unit-missing',
      );
    }
    layout.end = this.endOfLast();
    return layout;
  });

  // ------------------------------------------------------------ plan

  readonly plan = this.RULE('plan', (): Plan => {
    const start = this.CONSUME(T.LBrace).startOffset;
    const stages: Stage[] = [];
    let parted = true;
    this.MANY(() =>
      this.OR({
        IGNORE_AMBIGUITIES: true,
        DEF: [
          {
            ALT: () => {
              this.CONSUME(T.Semicolon);
              parted = true;
            },
          },
          {
            ALT: () => {
              const token = this.next();
              if (!parted && !token.beginsLine) {
                this.wrong(token, 'syntax', 'The stages of a plan are parted by semicolons.', {
                  example: 'plan { 8 N·m; 16 N·m }',
                });
              }
              parted = false;
              stages.push(this.SUBRULE(this.stage));
            },
          },
          {
            ALT: () => {
              this.SUBRULE(this.strayInPlan);
            },
          },
          {
            ALT: () => {
              this.SUBRULE(this.skipBlock);
            },
          },
        ],
      }),
    );
    this.CONSUME(T.RBrace);
    let toYield = false;
    this.OPTION(() => {
      this.CONSUME(T.ToYield);
      toYield = true;
    });
    return { stages, toYield, start, end: this.lastEnd() };
  });

  private readonly strayInPlan = this.RULE('strayInPlan', () => {
    this.wrong(
      this.next(),
      'syntax',
      `${shown(this.next())} is not a stage; a stage is a torque, an angle, a percentage, or by hand, loosen, back off, wait, again, until.`,
      { example: 'plan { 8 N·m; 16 N·m; 60° }' },
    );
    this.CONSUME(T.Skippable);
    this.MANY({
      GATE: () => this.LA(1).tokenType !== T.Semicolon && !this.next().beginsLine,
      DEF: () => this.CONSUME1(T.Skippable),
    });
  });

  private readonly stage = this.RULE('stage', (): Stage => {
    const start = this.startOfNext();
    let stage: Stage = { kind: 'by hand', start, end: start };
    this.OR([
      {
        ALT: () => {
          const quantity = this.SUBRULE(this.quantity);
          if (this.RECORDING_PHASE) return;
          stage = {
            kind: kindOf(quantity.amounts[quantity.amounts.length - 1]?.unit?.text),
            quantity,
            start,
            end: start,
          };
          this.checkQuantity(quantity, 'a stage', 'N·m, ° or %');
        },
      },
      { ALT: () => this.CONSUME(T.ByHand) },
      {
        ALT: () => {
          const kind = keyOf(this.CONSUME(T.StageWord)).text as 'loosen' | 'back off' | 'wait' | 'again';
          stage = { kind, start, end: start };
          this.OPTION(() => {
            const quantity = this.SUBRULE1(this.quantity);
            if (stage.kind === 'loosen') {
              this.problem('syntax', 'To loosen by an amount is written “back off”.', quantity, {
                example: 'back off 1/6 turn',
              });
            } else if (stage.kind === 'back off' || stage.kind === 'wait' || stage.kind === 'again') {
              stage.quantity = quantity;
              this.checkQuantity(quantity, `“${stage.kind}”`, STAGE_UNITS[stage.kind]);
            }
          });
        },
      },
      {
        ALT: () => {
          this.CONSUME(T.Until);
          const text = this.wantedText('until', 'until "the hub binds" while turning hub') ?? {
            start,
            end: start,
            value: '',
            holes: [],
          };
          let turning: Ref | undefined;
          this.OPTION1(() => {
            this.CONSUME(T.While);
            this.OPTION2({
              GATE: () => this.LA(1).image === 'turning',
              DEF: () => this.CONSUME(T.PlainWord),
            });
            turning = this.SUBRULE(this.oneRef);
          });
          stage = turning
            ? { kind: 'until', text, turning, start, end: start }
            : { kind: 'until', text, start, end: start };
        },
      },
    ]);
    if (!this.RECORDING_PHASE) stage.end = this.endOfLast();
    return stage;
  });

  // ------------------------------------------------------------ stepping over

  /** A block that nothing can be made of, with everything in it. */
  readonly skipBlock: () => void = this.RULE('skipBlock', () => {
    this.CONSUME(T.LBrace);
    this.MANY(() =>
      this.OR([
        { ALT: () => this.CONSUME(T.Skippable) },
        { ALT: () => this.SUBRULE(this.skipBlock as never) },
      ]),
    );
    this.CONSUME(T.RBrace);
  });

  /** Steps over what is left up to a brace or the next statement. */
  readonly junk = this.RULE('junk', () => {
    this.MANY({ GATE: () => !this.atStatementEnd(), DEF: () => this.CONSUME(T.Skippable) });
  });
}

const STAGE_UNITS = { 'back off': '° or turn', wait: 'min or h', again: 'N·m or lbf·ft' } as const;

function kindOf(unit: string | undefined): 'torque' | 'angle' | 'percent' {
  const found = unit === undefined ? undefined : unitByText(unit);
  if (found?.is !== 'unit') return 'torque';
  if (found.unit.symbol === '%') return 'percent';
  return found.unit.kind === 'angle' ? 'angle' : 'torque';
}
