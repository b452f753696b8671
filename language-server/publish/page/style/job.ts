/** The job: tasks, steps with their boxes, ways, tables of readings, fields to write into. */
export const JOB = `
.task { margin-top: 2rem; }
.task > h3 { font-size: 1.2rem; border-bottom: .125rem solid var(--ink); padding-bottom: .3rem; }
.number { font-variant-numeric: tabular-nums; font-weight: 700; margin-right: .35rem; color: var(--accent); }
.step { border-bottom: 1px solid var(--line); padding: .7rem 0; }
.step .line { display: grid; grid-template-columns: 2.75rem minmax(0, 1fr); gap: .25rem; align-items: start; }
.tick { display: grid; place-items: center; width: 2.75rem; height: 2.75rem; margin: -.6rem 0 0 -.75rem; cursor: pointer; }
.tick input { width: 1.4rem; height: 1.4rem; margin: 0; }
.do { font-size: 1.06rem; font-weight: 550; margin-bottom: .3rem; }
.more, .author, .expect { margin-bottom: .3rem; }
.author { color: var(--ink); font-style: italic; }
.measure { white-space: nowrap; font-variant-numeric: tabular-nums; }
.under { font-size: .9rem; font-weight: 600; color: var(--watch); margin-bottom: .25rem; }
.lead { font-weight: 600; margin: .75rem 0 .4rem; }
.remark { color: var(--soft); }
.group { border-left: .125rem solid var(--line); padding-left: .9rem; margin: 1rem 0; }
.branch, .repeat, .hold, .choice { border: 1px solid var(--line); border-radius: .3rem; padding: .1rem .9rem .6rem; margin: .9rem 0; background: var(--sheet); }
.hold { border-left: .25rem solid var(--accent); }
.way { border-left: .125rem dashed var(--strong-line); padding-left: .9rem; margin: .6rem 0 .6rem .1rem; }
.way-label { font-weight: 650; margin-bottom: .2rem; }
.stop { border: .125rem solid var(--stop); background: var(--stop-ground); color: var(--stop); padding: .6rem .9rem; margin: .75rem 0; border-radius: .2rem; }
.stages { list-style: decimal; margin: 0 0 .5rem; padding-left: 1.6rem; }
.outcomes caption { font-weight: 600; }
.outcomes tr.stop { border: 0; color: var(--stop); background: none; }
.outcomes tr.here { background: var(--accent-ground); outline: .125rem solid var(--accent); outline-offset: -.125rem; }
.falls { display: block; font-weight: 650; color: var(--accent); }
.record { display: flex; flex-wrap: wrap; gap: .3rem .6rem; align-items: center; padding: .4rem 0; }
.record input { font: inherit; color: inherit; background: var(--sheet); border: 1px solid var(--strong-line); border-radius: .2rem; padding: .35rem .6rem; min-height: 2.75rem; width: 9rem; max-width: 100%; }
.record.signature input, .record.second-person input, .record.text input { width: 16rem; }
.waived, .missing { font-size: .9rem; border: 1px dashed var(--strong-line); padding: .35rem .6rem; }
figure { margin: .6rem 0; }
figure img { max-width: 100%; height: auto; border: 1px solid var(--line); background: #fff; }
figcaption { font-size: .9rem; color: var(--soft); }
.step.done .do { color: var(--done); }
.step:target, .task:target { scroll-margin-top: 1rem; background: var(--accent-ground); }
.caution-text { max-width: 44rem; }
.tally-says:empty { display: none; }
.tally-says { border: 1px solid var(--watch); background: var(--watch-ground); color: var(--watch); padding: .6rem .9rem; font-weight: 600; }
.tally-says.whole { border-color: var(--done); background: var(--done-ground); color: var(--done); }
@media (pointer: coarse) {
  .tick input { width: 1.75rem; height: 1.75rem; }
  .axis label { min-height: 2.75rem; }
}
`;
