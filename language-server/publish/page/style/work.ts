/** The panel that the script adds: beside the sheet where there is room, else along the lower edge. */
export const WORK = `
.bench { background: var(--sheet); border-top: .2rem solid var(--accent); padding: .5rem 1rem; }
.bench h2 { all: unset; font-weight: 700; }
.bench p { margin: 0 0 .25rem; font-size: .9rem; }
.bench .progress { font-weight: 600; }
.bench progress { width: 100%; height: .5rem; accent-color: var(--accent); display: block; }
.bench summary { cursor: pointer; padding: .5rem 0; min-height: 2.75rem; align-content: center; }
.bench .count { margin-left: .5rem; padding: 0 .5rem; border-radius: 1rem; background: var(--accent); color: var(--sheet); font-variant-numeric: tabular-nums; font-weight: 700; }
.bench ul { max-height: 40vh; overflow: auto; margin: 0 0 .5rem; padding-left: 1.1rem; }
.bench .gaps { color: var(--watch); font-weight: 600; }
.bench .kept { color: var(--soft); }
.buttons { display: flex; flex-wrap: wrap; gap: .4rem; }
button { font: inherit; color: var(--ink); background: var(--plate); border: 1px solid var(--strong-line); border-radius: .3rem; min-height: 2.75rem; padding: .25rem .9rem; cursor: pointer; }
button[aria-pressed=true] { background: var(--accent); color: var(--sheet); }
@media (max-width: 71.99rem) {
  #work { position: sticky; bottom: 0; z-index: 3; }
  .bench { max-height: 60vh; overflow: auto; }
}
@media (max-width: 71.99rem) and (max-height: 30rem) { #work { position: static; } }
@media (min-width: 72rem) {
  .working { display: grid; grid-template-columns: minmax(0, 1fr) 20rem; }
  .working .sheet { grid-column: 1; width: 100%; }
  #work { grid-column: 2; grid-row: 1; }
  .working .sheet { grid-row: 1; }
  .bench { position: sticky; top: 1rem; margin: 2rem 1.5rem 1rem 0; border: 1px solid var(--line); border-top: .2rem solid var(--accent); border-radius: .3rem; }
}
html.large .tick input { width: 2rem; height: 2rem; }
html.large .do { font-size: 1.15rem; }
`;
