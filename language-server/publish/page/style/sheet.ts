/** The sheet itself: type, head, name plate, lists and tables. */
export const SHEET = `
*, ::before, ::after { box-sizing: border-box; }
html { font: 100%/1.5 system-ui, "Segoe UI", Roboto, "Noto Sans", "Liberation Sans", Arial, sans-serif; background: var(--paper); color: var(--ink); -webkit-text-size-adjust: 100%; text-size-adjust: 100%; scroll-padding-top: 1rem; }
html.large { font-size: 125%; }
body { margin: 0; overflow-wrap: break-word; }
.sheet { max-width: 50rem; margin: 0 auto; padding: 1.25rem 1rem 3rem; }
@media (min-width: 48rem) { .sheet { padding: 2rem 2.5rem 4rem; } }
h1, h2, h3, h4, h5, h6 { line-height: 1.2; text-wrap: balance; margin: 0 0 .5rem; }
h1 { font-size: clamp(1.6rem, 1.2rem + 2vw, 2.3rem); letter-spacing: -.015em; }
h2 { font-size: 1.35rem; margin-top: 2.5rem; padding-top: .6rem; border-top: .2rem solid var(--accent); color: var(--accent); }
h3 { font-size: 1.08rem; margin-top: 1.5rem; }
h4, h5, h6 { font-size: 1rem; margin-top: 1.2rem; }
p { margin: 0 0 .5rem; }
a { color: var(--link); text-underline-offset: .15em; }
:focus-visible { outline: .2rem solid var(--focus); outline-offset: .15rem; border-radius: .1rem; }
main:focus { outline: none; }
ul, ol { margin: 0 0 .5rem; padding-left: 1.3rem; }
small { font-size: .875em; color: var(--soft); }
.none { color: var(--soft); font-style: italic; }
.hidden { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); white-space: nowrap; }
.skip { position: absolute; left: 1rem; top: -5rem; background: var(--sheet); padding: .75rem 1rem; z-index: 5; }
.skip:focus { top: 1rem; }
.home { margin-bottom: 1rem; }
.masthead .purpose { font-size: 1.1rem; color: var(--soft); max-width: 40rem; }
.plate { display: grid; grid-template-columns: repeat(auto-fit, minmax(8rem, 1fr)); margin: 1rem 0; background: var(--plate); border: .125rem solid var(--strong-line); border-radius: .5rem; }
.plate > div { padding: .5rem .9rem; min-width: 0; box-shadow: -1px -1px 0 var(--line); }
.plate { overflow: hidden; }
dt { font-size: .8rem; color: var(--soft); letter-spacing: .03em; }
dd { margin: 0; font-weight: 600; }
.latest { font-size: .95rem; }
.facts { margin: 0; display: grid; gap: 0; }
.facts > div { display: grid; grid-template-columns: minmax(0, 12rem) minmax(0, 1fr); gap: .25rem 1rem; padding: .5rem 0; border-bottom: 1px solid var(--line); }
.facts dt { font-size: .95rem; color: var(--ink); font-weight: 600; letter-spacing: 0; }
.facts dd { font-weight: 400; }
.facts dd > :last-child { margin-bottom: 0; }
.facts ul { padding-left: 1.1rem; }
@media (max-width: 30rem) { .facts > div { grid-template-columns: minmax(0, 1fr); } }
table { border-collapse: collapse; width: 100%; margin: .25rem 0 .75rem; font-variant-numeric: tabular-nums; }
caption, .table-title { text-align: left; font-weight: 600; padding: .25rem 0; margin: 0; }
th, td { text-align: left; vertical-align: top; padding: .4rem .6rem; border: 1px solid var(--line); overflow-wrap: anywhere; }
thead th { background: var(--plate); font-size: .875rem; overflow-wrap: break-word; hyphens: auto; }
th p, td p { margin: 0; }
th[scope=row] { font-weight: 600; min-width: 6rem; }
.list :is(th, td):first-child { min-width: 7rem; }
@media (max-width: 30rem) { thead th { font-size: .75rem; letter-spacing: -.01em; } th, td { padding: .35rem .3rem; } th[scope=row] { min-width: 5rem; } .list :is(th, td):first-child { min-width: 5.5rem; } html.large thead th { overflow-wrap: anywhere; } html.large .list :is(th, td):first-child { min-width: 4.5rem; } }
.scroll { overflow-x: auto; }
.contents ol { columns: 18rem 2; column-gap: 2rem; padding-left: 1.6rem; }
.contents li { padding: .15rem 0; break-inside: avoid; }
.choose { background: var(--accent-ground); border: 1px solid var(--accent); border-radius: .5rem; padding: .9rem 1rem; margin-top: 1.5rem; }
.choose h2 { border: 0; margin: 0 0 .25rem; padding: 0; font-size: 1.1rem; }
.axis { border: 0; margin: .5rem 0 0; padding: 0; display: flex; flex-wrap: wrap; gap: .4rem; min-width: 0; }
.axis legend { font-weight: 600; padding: 0 0 .25rem; }
.axis label { display: inline-flex; align-items: center; gap: .4rem; min-height: 2.5rem; padding: .25rem .8rem; border: 1px solid var(--strong-line); border-radius: .3rem; background: var(--sheet); cursor: pointer; }
.axis label:has(:checked) { border-color: var(--accent); box-shadow: inset 0 0 0 .125rem var(--accent); font-weight: 600; }
input { accent-color: var(--accent); }
.warned { border: .25rem solid var(--stop); background: var(--stop-ground); padding: 0 1rem .75rem; margin: 1rem 0; }
.warned h2 { border: 0; color: var(--stop); margin-top: .75rem; padding: 0; }
.findings { padding-left: 1.1rem; }
.findings li { margin-bottom: .35rem; }
.severity.error { color: var(--stop); }
.severity.warning { color: var(--watch); }
.drawn svg { display: block; max-width: 100%; height: auto; }
.maps { columns: 20rem 2; column-gap: .75rem; }
.maps .drawn { margin: 0 0 .75rem; width: auto; break-inside: avoid; }
.map-words summary { min-height: 2.5rem; align-content: center; cursor: pointer; }
.drawn .dowel-chart { min-width: 32rem; }
pre { width: max-content; min-width: 100%; margin: .5rem 0; background: var(--plate); border: 1px solid var(--line); padding: .75rem 1rem; font: .9rem/1.45 ui-monospace, "DejaVu Sans Mono", Consolas, monospace; }
code { font: .92em ui-monospace, "DejaVu Sans Mono", Consolas, monospace; }
.entries { list-style: none; padding: 0; }
.entries li { padding: .6rem 0; border-bottom: 1px solid var(--line); }
.entries a { font-weight: 600; font-size: 1.05rem; }
.entries a, .entries small { display: block; }
.search span { display: block; }
.search { margin-top: 1rem; }
.search label { font-weight: 600; }
.search input { font: inherit; color: inherit; background: var(--sheet); border: 1px solid var(--strong-line); border-radius: .3rem; min-height: 2.75rem; padding: .25rem .75rem; width: 20rem; max-width: 100%; }
.search p { margin: .25rem 0 0; min-height: 1.5em; }
.drawn { width: fit-content; max-width: 100%; border: 1px solid var(--line); background: var(--sheet); padding: .5rem; --dowel-paper: var(--sheet); --dowel-accent: var(--accent); }
.drawn figcaption { max-width: 22rem; }
.drawn figcaption p { margin: .25rem 0; font-size: .9rem; }
/* Beside the box of its step there is no room for it on a telephone. */
@media (max-width: 40rem) { .step .drawn { margin-left: -2.75rem; max-width: none; } }
.drawn summary { min-height: 2.5rem; align-content: center; cursor: pointer; }
[hidden] { display: none !important; }
`;
