-- How the page looks: to be read at home, at a table or from across the worktop, and printed. The sheet's ink and paper; one
-- column of reading, the list beside the method where there is room.
page_style = [[
:root {
  color-scheme: light dark; --ink: #191816; --soft: #55524c; --paper: #fffefb; --hair: #c9c4b8; --gate: #0b4a63; --gate-tint: #e8f1f4; --stop: #8a1230;
  --sans: "Avenir Next", "Segoe UI", Roboto, "Noto Sans", "Open Sans", "Liberation Sans", "DejaVu Sans", sans-serif;
  --serif: "Iowan Old Style", "Palatino Linotype", Palatino, P052, "Noto Serif", "DejaVu Serif", serif;
}
@media screen and (prefers-color-scheme: dark) {
  :root { --ink: #f1eee6; --soft: #b9b4a8; --paper: #171614; --hair: #4b473f; --gate: #8ccbe2; --gate-tint: #14262e; --stop: #ffa8b8; }
}
* { box-sizing: border-box; }
html { font-size: 112.5%; -webkit-text-size-adjust: 100%; text-size-adjust: 100%; }
body { margin: 0; background: var(--paper); color: var(--ink); font: 1rem/1.55 var(--sans); font-variant-numeric: lining-nums; overflow-wrap: break-word; }
main { max-width: 56rem; margin: 0 auto; padding: 1.5rem 1.1rem 4rem; }
h1, h2, h3, p, ol, ul, dl, dd, figure, table { margin: 0; padding: 0; }
h1 { font: 700 2.4rem/1.1 var(--serif); letter-spacing: -.01em; text-wrap: balance; }
h2 { font: 700 1.5rem/1.2 var(--serif); text-wrap: balance; margin-bottom: .6rem; }
h2 small { font: 400 .875rem/1.2 var(--sans); color: var(--soft); margin-left: .4em; white-space: nowrap; }
h3 { font: 700 1rem/1.4 var(--sans); margin-bottom: .35rem; }
img { max-width: 100%; height: auto; display: block; }
figure { margin-top: 1.1rem; }
figcaption, .by, .soft, .rules { color: var(--soft); }
figcaption, .by, .rules { font-size: .875rem; }
b { font-weight: 700; }
mark { background: none; color: inherit; border-bottom: 2px dotted currentColor; }
.draft { display: inline-block; border: 2px solid; padding: .1rem .6rem; margin-bottom: .8rem; font-weight: 700; }
.summary { font: italic 1.2rem/1.4 var(--serif); max-width: 36em; margin-top: .6rem; }
.by { margin-top: .5rem; }
.facts { display: flex; flex-wrap: wrap; gap: .6rem 2.2rem; margin-top: 1.1rem; padding: .7rem 0; border: solid var(--hair); border-width: 1px 0; }
.facts dt { font-size: .875rem; color: var(--soft); }
.facts dd { font-weight: 700; }
.first { display: grid; gap: 1rem 2.5rem; margin-top: 1.1rem; }
.first section { margin: 0; padding: 0 0 0 .9rem; border-left: .3rem solid var(--ink); border-top: 0; }
.first h2 { font: 700 1rem/1.4 var(--sans); margin-bottom: .15rem; }
.first p { max-width: 62ch; }
.first p + p { margin-top: .3rem; }
.first .stop { border-color: var(--stop); }
.stop h2, .caution strong { color: var(--stop); }
section { margin-top: 2rem; padding-top: .8rem; border-top: 2px solid; }
.work { display: grid; gap: 1.2rem 2.5rem; }
.list { list-style: none; }
.list li { padding: .3rem 0; border-bottom: 1px solid var(--hair); }
.list ul { list-style: "– "; padding-left: 1.1em; }
.list ul li:last-child { border-bottom: 0; }
.group { font-weight: 700; margin-top: .7rem; }
.steps { list-style: none; counter-reset: step; max-width: 62ch; }
.steps > li { counter-increment: step; position: relative; padding: 0 0 .9rem 2.4rem; }
.steps > li::before { content: counter(step); position: absolute; left: 0; top: -.05rem; font: 700 1.45rem/1.55rem var(--serif); }
.steps p + p { margin-top: .4rem; }
.gate, .control { background: var(--gate-tint); border-left: .3rem solid var(--gate); padding: .35rem .8rem; }
.gate strong, .control strong { color: var(--gate); }
.steps .gate + p { margin-top: .5rem; }
.why, .note { color: var(--soft); }
.method > p { margin-top: .5rem; max-width: 62ch; }
.parts { margin-top: 3rem; }
.below { font-size: .875rem; color: var(--soft); border-top: .5rem solid var(--ink); padding-top: .4rem; }
.parts section { margin-top: 1rem; }
.parts section > p { max-width: 62ch; margin-bottom: .5rem; }
table { border-collapse: collapse; width: 100%; max-width: 24rem; font-variant-numeric: tabular-nums; }
th, td { text-align: left; font-weight: 400; padding: .2rem 0; border-bottom: 1px solid var(--hair); }
td { text-align: right; padding-left: 1.5rem; }
.nutrition .soft { font-size: .875rem; max-width: 62ch; margin-top: .5rem; }
.rules { margin-top: 2rem; border-top: 1px solid var(--hair); padding-top: .6rem; }
@media (min-width: 48rem) {
  .both { grid-template-columns: minmax(13rem, 2fr) 5fr; }
  .first { grid-template-columns: 1fr 1fr; }
  .first section:only-child { grid-column: 1 / -1; }
}
@media print {
  @page { size: auto; margin: 15mm 16mm 16mm; }
  :root { --ink: #000; --soft: #444; --paper: #fff; --hair: #bbb; --gate: #000; --gate-tint: #fff; --stop: #000; }
  html { font-size: 10.5pt; }
  main { max-width: none; padding: 0; }
  .both { grid-template-columns: minmax(12rem, 2fr) 5fr; }
  .first { grid-template-columns: 1fr 1fr; }
  .first section:only-child { grid-column: 1 / -1; }
  h1 { font-size: 20pt; }
  h1, h2, h3, .group { break-after: avoid; }
  .steps > li, .list li, .first section, .nutrition, .keep { break-inside: avoid; }
  section { margin-top: 1.2rem; padding-top: .5rem; }
}
]]
