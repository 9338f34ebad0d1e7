// The card read by a CommonMark library (npm: commonmark), which is not ours: of every fiche of the project it must come out
// with one title, the headings, lists, steps and bold words that the fiche has, no HTML, no link, and every word of it.
// TAMIS names the program. Says SKIPPED without commonmark in build-sheet/node_modules or NODE_PATH.
import { execFileSync } from 'node:child_process'
import { readdirSync } from 'node:fs'
import { join } from 'node:path'
import { load, root, tamis } from './outside.mjs'

const { Parser } = load('commonmark')
const faults = []

const fiches = ['tests/kitchen', 'tests/against/real', 'tests/lua/sheet', 'schemas'].flatMap(folder =>
  readdirSync(join(root, folder), { recursive: true }).filter(f => f.endsWith('.fiche.xml')).map(f => join(folder, f)))

// Every node of the tree: kinds counted, words gathered.
function read(markdown) {
  const found = { counts: {}, words: '', strong: [], items: [] }
  const walker = new Parser().parse(markdown).walker()
  for (let event = walker.next(); event; event = walker.next()) {
    const { node, entering } = event
    if (!entering) continue
    const kind = node.type === 'heading' ? `h${node.level}` : node.type === 'list' ? node.listType : node.type
    found.counts[kind] = (found.counts[kind] ?? 0) + 1
    if (node.type === 'item' && node.listType === 'ordered') found.items.push(node.listStart)
    if (['paragraph', 'heading'].includes(node.type)) found.words += '\n'
    if (node.type === 'strong') found.strong.push(node.firstChild?.literal ?? '')
    if (node.literal !== null) found.words += node.literal
    if (['softbreak', 'linebreak'].includes(node.type)) found.words += ' '
  }
  return found
}

// What the source says when its Markdown signs are taken off by hand.
const bare = markdown => markdown.split('\n').map(l => l.replace(/^ *(#+|-|\d+\.) +/, '').trim()).filter(Boolean).join(' ')
  .replace(/(?<!\\)\*\*/g, '').replace(/\\([!-/:-@[-`{-~])/g, '$1').replace(/\s+/g, ' ')

for (const fiche of fiches) {
  const fault = what => faults.push(`${fiche}: ${what}`)
  const markdown = execFileSync(tamis, ['export', '--as', 'card', '--kitchen', join(root, 'tests/kitchen/kitchen.xml'), join(root, fiche)]).toString()
  const { counts, words, strong } = read(markdown)
  if (counts.h1 !== 1) fault(`${counts.h1} titles`)
  for (const kind of ['html_block', 'html_inline', 'link', 'image', 'code', 'code_block', 'emph', 'block_quote', 'thematic_break']) {
    if (counts[kind]) fault(`${counts[kind]} ${kind}`)
  }
  const said = words.replace(/\s+/g, ' ').trim()
  if (said !== bare(markdown)) {
    const at = [...said].findIndex((c, i) => c !== [...bare(markdown)][i])
    fault(`its words differ at "${said.slice(Math.max(0, at - 20), at + 30)}" / "${bare(markdown).slice(Math.max(0, at - 20), at + 30)}"`)
  }
  if (/\*\*/.test(said)) fault('bold that does not close')
  const shown = JSON.parse(execFileSync(tamis, ['format', '--as', 'json', join(root, fiche)]).toString())
  const steps = (JSON.stringify(shown).match(/"step":/g) ?? []).length
  const items = (markdown.match(/^\d+\. /gm) ?? []).length
  const numbered = (counts.item ?? 0) - (markdown.match(/^ *- /gm) ?? []).length
  if (numbered !== items) fault(`${numbered} numbered steps read, ${items} written`)
  if (steps > 0 && items === 0) fault('no steps')
  if (!strong.some(s => s.length > 0)) fault('nothing bold')
}
for (const line of faults) console.log(line)
console.log(faults.length ? `${faults.length} faults` : `${fiches.length} cards read: nothing to say`)
process.exit(faults.length || fiches.length < 20 ? 1 : 0)
