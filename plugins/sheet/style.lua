-- How the sheet looks. Paper first: everything is told apart by weight, rules and words; colour, on a screen, only repeats it.
-- Two axes run down the whole sheet: amounts stand left of the first, the work right of the second.
-- Type is the system's own, since the file has to stand alone: a humanist sans that reads at arm's length, and a book face
-- for what is read once. Text is set 45 to 75 letters wide.
style = [[
:root {
  color-scheme: light dark;
  --ink: #191816; --soft: #55524c; --paper: #fffefb; --hair: #c9c4b8;
  --gate: #0b4a63; --gate-tint: #e8f1f4; --stop: #8a1230; --on-stop: #fff;
  --sans: "Avenir Next", "Segoe UI", Roboto, "Noto Sans", "Open Sans", "Liberation Sans", "DejaVu Sans", sans-serif;
  --serif: "Iowan Old Style", "Palatino Linotype", Palatino, P052, "Noto Serif", "DejaVu Serif", serif;
  --number: 2.9rem;
}
@media screen and (prefers-color-scheme: dark) {
  :root {
    --ink: #f1eee6; --soft: #b9b4a8; --paper: #171614; --hair: #4b473f;
    --gate: #8ccbe2; --gate-tint: #14262e; --stop: #ffa8b8; --on-stop: #171614;
  }
}
* { box-sizing: border-box; }
html { font-size: 106.25%; -webkit-text-size-adjust: 100%; text-size-adjust: 100%; scroll-padding-top: 4.5rem; }
body {
  margin: 0; background: var(--paper); color: var(--ink); font: 1rem/1.5 var(--sans);
  font-variant-numeric: lining-nums tabular-nums; overflow-wrap: break-word;
}
.sheet { max-width: 78rem; margin: 0 auto; padding: 1.25rem 1rem 3rem; }
h1, h2, h3, p, ol, ul, dl, dd, table, figure { margin: 0; padding: 0; }
ol, ul { list-style: none; }
a { color: inherit; text-underline-offset: .2em; }
img { max-width: 100%; height: auto; }
:focus-visible { outline: 3px solid var(--gate); outline-offset: 2px; }
.figure { font-weight: 700; white-space: nowrap; }
.long { white-space: normal; }
.cue { font-style: italic; }
.soft { color: var(--soft); }
.gap { border-bottom: 2px dotted currentColor; }
.gap::before { content: "[\a0"; }
.gap::after { content: "\a0]"; }

.head { border-top: .5rem solid var(--ink); padding-top: .75rem; }
.mark { display: flex; flex-wrap: wrap; gap: 0 1.25em; font-size: .875rem; color: var(--soft); }
.state { font-weight: 700; color: var(--ink); }
.draft { border: 2px solid; padding: 0 .5em; }
h1 { font: 700 2.25rem/1.1 var(--serif); letter-spacing: -.01em; margin-top: .35rem; text-wrap: balance; }
.summary { font: italic 1.125rem/1.4 var(--serif); max-width: 36em; margin-top: .5rem; }
.banner { border: 5px double; padding: .5rem .75rem; margin-top: 1rem; font-weight: 700; }

.before { display: grid; gap: 1rem 2rem; margin-top: 1.25rem; }
.before > * { border-top: 1px solid; padding-top: .4rem; }
.before h2 { font: 400 .875rem/1.5 var(--sans); color: var(--soft); }
.before h3 { font: 700 1rem/1.5 var(--sans); margin-top: .4rem; }
.before dl { display: grid; grid-template-columns: max-content 1fr; gap: .1rem .9rem; margin: .25rem 0; }
dl > div { display: contents; }
.before dt, .its-yield dt { color: var(--soft); }
.before dd .figure, .its-yield .figure { font-weight: 400; }
.much { font-size: 1.25rem; line-height: 1.3; }
.allergens dd { font-weight: 700; }
.duty { font-size: .875rem; line-height: 1.4; color: var(--soft); max-width: 60ch; margin-top: .3rem; }
.cautions p + p { margin-top: .4rem; }
.reading { margin-top: .75rem; max-width: 60ch; font-size: .9375rem; }

.run {
  position: sticky; top: 0; z-index: 1; background: var(--paper); margin: 1.5rem -1rem 0; padding: 0 1rem;
  border: solid; border-width: 1px 0;
}
.run ul, .run ol { display: flex; flex-wrap: wrap; align-items: baseline; }
.run ul { gap: 0 1.25rem; }
.run ul > li { display: flex; align-items: baseline; }
.run .day { font-size: .875rem; color: var(--soft); margin-right: .25rem; white-space: nowrap; }
.run a {
  display: flex; align-items: baseline; gap: .5rem; min-width: 44px; min-height: 44px; text-decoration: none;
  padding: calc((44px - 1.5rem) / 2) .5rem;
}
.run .letter { font: 700 1.25rem/1 var(--serif); }
.run .name { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); white-space: nowrap; }

.strip { margin-top: .9rem; }
.strip h2 { font: 400 .875rem/1.5 var(--sans); color: var(--soft); }
.strip ol { display: flex; flex-wrap: wrap; gap: .35rem .6rem; }
.strip li { border: 1px solid var(--gate); border-top-width: 4px; padding: .1rem .5rem .15rem; font-size: .9375rem; background: var(--gate-tint); }
.strip .stop { border: 3px solid var(--stop); background: none; padding: .1rem .45rem; }
.strip .figure { font-weight: 400; }
.drawing { margin: .75rem 0; }
.drawing svg { max-width: min(100%, 36rem); height: auto; display: block; }
figcaption { font-size: .875rem; color: var(--soft); }

.component { margin-top: 2.25rem; border-top: 3px solid; padding-top: .6rem; }
.component > header { display: flex; flex-wrap: wrap; align-items: baseline; gap: 0 .9rem; }
.component h2 { font: 700 1.6rem/1.2 var(--serif); text-wrap: balance; }
.component .letter { display: inline-block; min-width: 1.3em; }
.when { margin-left: auto; font-size: .9375rem; color: var(--soft); }
.its-yield > *, .its-yield dl, .its-yield dl > div, .its-yield dt, .its-yield dd { display: inline; font-size: 1rem; }
.its-yield dt::before { content: "\a0\b7\a0"; }
.its-yield dd::before { content: "\a0"; }
.work { display: grid; gap: 1rem 2rem; margin-top: .75rem; }
summary { min-height: 44px; display: flex; align-items: center; gap: .6em; font-weight: 700; cursor: pointer; list-style: none; }
summary::-webkit-details-marker { display: none; }
summary::before { content: "+"; font-size: 1.4rem; line-height: 1; width: 1em; text-align: center; }
details[open] > summary::before { content: "\2212"; }

.list { border-collapse: collapse; width: 100%; table-layout: fixed; }
.list th, .list td { text-align: left; vertical-align: baseline; padding: .32rem 0; font-weight: 400; border-top: 1px solid var(--hair); }
.list thead th { font-size: .875rem; color: var(--soft); border-top: 0; padding-top: 0; line-height: 1.4; }
.list thead .figure { font-weight: 400; white-space: normal; }
.list th.amount { width: max(calc(var(--amount) * .58rem + .75rem), 4.75rem); padding-right: .75rem; }
.list td.amount { font-weight: 700; padding-right: .75rem; }
td.amount { overflow-wrap: normal; }
.second { display: block; font-weight: 400; font-size: .9375rem; }
.whole { display: inline-block; text-align: right; min-width: calc(var(--whole) * 1ch); }
.how { display: block; color: var(--soft); font-size: .9375rem; line-height: 1.35; }
.how .figure { font-weight: 400; }
.comma { display: none; }
@media screen { .list td a { display: inline-flex; align-items: center; min-height: 44px; min-width: 44px; } }
.list .group th { font-weight: 700; padding-top: .9rem; border-top: 0; }
.list tbody:first-of-type .group th { padding-top: .32rem; }

.method { max-width: 35.5em; }
.steps > li { display: grid; grid-template-columns: var(--number) 1fr; padding: .1rem 0 1.1rem; }
.steps > li > * { grid-column: 2; }
.steps > li > .number { grid-column: 1; font-weight: 700; font-size: 1.0625em; }
.steps p:has(.where) { display: flow-root; }
.where { float: right; padding-left: 1.5em; font-size: .875rem; line-height: 1.714; color: var(--soft); text-align: right; }
.where > span { display: inline-block; }
.where > span + span::before { content: "\b7\a0"; }
.where b { color: var(--ink); }
.place { display: inline-block; }
.place::first-letter { text-transform: uppercase; }
.where .figure { font-weight: 400; color: inherit; }
.more { margin-top: .4rem; padding-left: .9rem; border-left: 1px solid var(--hair); font-size: .9375rem; }
.remarks { margin-bottom: .9rem; padding-left: var(--number); }
.caution { font-weight: 400; }

.steps > li > .gate {
  grid-column: 1 / -1; position: relative; margin: 0 0 .7rem; padding: .5rem .75rem .55rem var(--number);
  border: solid var(--gate); border-width: 5px 0 1px; background: var(--gate-tint);
}
.gate h3 { font: 700 1rem/1.4 var(--sans); color: var(--gate); }
.gate::before {
  content: ""; position: absolute; left: .9rem; top: .72rem; width: 1rem; height: 1rem; border: 2px solid var(--gate);
  background: var(--paper);
}
.steps > li > p + .gate, .steps > li > div + .gate { margin: .7rem 0 0; }

.steps > li > .control { grid-column: 1 / -1; border: 3px solid var(--stop); margin-top: .8rem; }
.control h3 {
  background: var(--stop); color: var(--on-stop); font: 700 1rem/1.4 var(--sans); padding: .3rem .75rem .35rem;
  -webkit-print-color-adjust: exact; print-color-adjust: exact;
}
.limit { font-size: 1.125em; padding: .5rem .75rem .3rem; }
.control dl { display: grid; grid-template-columns: max-content 1fr; gap: .15rem 1rem; padding: 0 .75rem .55rem; font-size: .9375rem; }
.control dt { color: var(--soft); }
.pencil { display: none; }

.keep { border-top: 1px solid var(--hair); padding: .5rem 0 .5rem var(--number); }
.keep h3 { font: 700 1rem/1.5 var(--sans); }
.after-work { margin-top: 2.5rem; border-top: 3px solid; }
.foot { padding: .6rem 0; border-bottom: 1px solid var(--hair); }
.foot h2 { font: 700 1.125rem/1.35 var(--serif); }
.foot > div { max-width: 35.5em; }
.foot li + li, .foot p + p { margin-top: .3rem; }
.colophon { display: grid; gap: .2rem; margin-top: 1rem; font-size: .875rem; color: var(--soft); max-width: 60em; }

@media screen and (max-width: 44.99rem) {
  .across .list th.amount { width: 29%; }
}
@media (min-width: 45rem) {
  html { font-size: 112.5%; }
  .sheet { padding: 1.75rem 2rem 4rem; }
  .run { margin-inline: -2rem; padding-inline: 2rem; }
  .before { grid-template-columns: repeat(auto-fit, minmax(12rem, 1fr)); }
  .side { grid-template-columns: minmax(12.5rem, 16rem) minmax(0, 1fr); }
  .work > details > summary { display: none; }
  .work > details::details-content { content-visibility: visible; display: block; }
  .side.two { grid-template-columns: minmax(14rem, 18rem) minmax(0, 1fr); }
  .bare > .method { grid-column: 2; }
  .side > .stays { position: sticky; top: 4rem; align-self: start; }
  .foot { display: grid; grid-template-columns: minmax(12.5rem, 16rem) minmax(0, 1fr); gap: 0 2rem; }
  h1 { font-size: 2.75rem; }
}
@media (min-width: 64rem) {
  html { font-size: 118.75%; }
  .run .name { position: static; width: auto; height: auto; overflow: visible; clip-path: none; white-space: normal; line-height: 1.2; }
}
@media screen and (max-height: 30rem) {
  html { scroll-padding-top: 0; }
  .run, .side > .stays { position: static; }
}

@page { margin: 17mm 14mm 16mm 18mm; font: 9pt "Avenir Next", "Segoe UI", Roboto, "Noto Sans", "Open Sans", sans-serif; }
@page :first { margin-top: 12mm; }
@media print {
  :root {
    --ink: #000; --soft: #333; --paper: #fff; --hair: #999; --gate: #000; --gate-tint: #fff; --stop: #000; --on-stop: #fff;
    --number: 2.4rem;
  }
  html { font-size: 10.6pt; }
  body { line-height: 1.38; orphans: 3; widows: 3; }
  a { text-decoration: none; }
  .sheet { max-width: none; padding: 0; }
  .head { border-top-width: 5pt; padding-top: 6pt; }
  h1 { font-size: 25pt; }
  .banner { padding: 3pt 8pt; margin-top: 7pt; }
  .before { grid-template-columns: repeat(auto-fit, minmax(44mm, 1fr)); gap: 0 6mm; margin-top: 9pt; }
  .run { position: static; margin: 9pt 0 0; padding: 2pt 0; border-width: .5pt 0; }
  .run ul { gap: 0 9mm; }
  .run ol { gap: 0 4mm; }
  .run .day { margin-right: 3mm; }
  .run a { min-height: 0; min-width: 0; padding: 0; gap: 1.5mm; }
  .run .letter { font-size: 1rem; }
  .run .name { position: static; width: auto; height: auto; overflow: visible; clip-path: none; white-space: normal; }

  .sheet .on-screen { display: none; }
  .strip { margin: 2pt 0 -5pt; font-size: 8pt; line-height: 1.25; }
  .strip h2, .strip ol, .strip li { display: inline; font-size: inherit; line-height: inherit; }
  .strip li { border: 0; padding: 0; white-space: normal; }
  .strip li + li::before { content: "\b7\a0"; }
  .strip .stop { border: 0; padding: 0; }
  .strip h2::after { content: ":\a0"; }
  .strip .stop > b:first-child { border: 1.5pt solid; padding: 0 2pt; }
  .strip, .drawing { break-inside: avoid; }
  .drawing svg { max-height: 90mm; width: auto; }
  figure img { max-height: 70mm; width: auto; }

  .component { margin-top: 11pt; padding-top: 5pt; border-top-width: 2pt; }
  .together { break-inside: avoid; }
  .steps > li, .control, .gate, .list tr, .keep, .before > *, .foot { break-inside: avoid; }
  .component > header, h2, h3, .group { break-after: avoid; }
  .component h2 { font-size: 15pt; }
  .work { margin-top: 5pt; gap: 6pt 6mm; }
  .side { grid-template-columns: 53mm minmax(0, 1fr); }
  .side.two { grid-template-columns: 62mm minmax(0, 1fr); }
  .work > details > summary { display: none; }
  .work > details::details-content { content-visibility: visible; display: block; }
  .bare > .method { grid-column: 2; }
  .side > .stays { position: static; }
  .list th, .list td { padding: 2.2pt 0; }
  .list th.amount, .list td.amount { padding-left: 4.2mm; padding-right: 2.5mm; }
  .list th.amount { width: max(calc(var(--amount) * .58rem + 6.7mm), 5.1rem); }
  .comma { display: inline; }
  .how { display: inline; }
  .list tbody tr:not(.group) td.amount:first-child { position: relative; }
  .list tbody tr:not(.group) td.amount:first-child::before {
    content: ""; position: absolute; left: 0; top: 3.6pt; width: 2.7mm; height: 2.7mm; border: .5pt solid #000;
  }
  .steps > li { padding-bottom: 6pt; }
  .steps > li > .gate { padding-top: 4pt; padding-bottom: 4pt; margin-bottom: 5pt; border-top-width: 4pt; }
  .gate::before { top: 5pt; left: .7rem; }
  .steps > li > .control { margin-top: 5pt; border-width: 2pt; }
  .limit { padding: 4pt .75rem 2pt; }
  .pencil { display: flex; gap: 5mm; padding: 4mm .75rem 2.2mm; font-size: .875rem; }
  .pencil span { flex: 1; border-bottom: .6pt solid; padding-bottom: 1mm; }
  .keep { padding: 4pt 0 4pt var(--number); }
  .after-work { margin-top: 11pt; border-top-width: 2pt; }
  .foot { display: grid; grid-template-columns: 53mm minmax(0, 1fr); gap: 0 6mm; padding: 4pt 0; }
  .colophon { margin-top: 5pt; }
}
]]
