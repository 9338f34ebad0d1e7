// The label as people meet it, in Chromium: WCAG 2.2 level A and AA by axe-core (npm) on a screen; on paper the height of its
// letters (Regulation (EU) 1169/2011, Article 13(2) and (3): a small x of 1.2 mm, 0.9 mm under 80 cm²), of the figures of its
// net quantity, and the label alone, on one page.
// TAMIS names the program. Needs Chromium, pdftotext, and axe-core and puppeteer-core in build-sheet/node_modules or
// NODE_PATH; says SKIPPED without.
import { execFileSync } from 'node:child_process'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { find, findChromium, load, root, tamis } from './outside.mjs'

const chromium = findChromium()
const pdftotext = find(['pdftotext'])
const puppeteer = load('puppeteer-core')
const axe = load('axe-core')

const tart = 'tests/kitchen/desserts/damson-almond-tart.fiche.xml'
const told = 'address=2 Slip Lane, Farbank;made=2026-11-27;mark=best-before'
// x: the least height of a small x; figures: that of the figures of the net quantity; both in mm.
const cases = [
  { name: 'prepacked', settings: told, x: 1.2, figures: 3 },
  { name: 'small', settings: `${told};small=yes;quantity=40 g`, x: 0.9, figures: 2 },
  { name: 'large', settings: `${told};quantity=1.2 kg`, x: 1.2, figures: 6 },
  { name: 'us', settings: `${told};law=us;nutrition=exempt`, x: 1.2, figures: 3.2 },
  { name: 'loose', settings: 'kind=loose', x: 1.2 },
  { name: 'trial', fiche: 'tests/kitchen/mains/braised-ox-cheek.fiche.xml', settings: 'trial=yes', x: 1.2, figures: 4 },
]
const faults = []
const work = mkdtempSync(join(tmpdir(), 'tamis-label-'))

// The smallest small x in the label, and the height of the capitals of its net quantity, in mm.
const heights = page => page.evaluate(() => {
  const mm = px => px / 96 * 25.4
  const measured = (e, unit) => {
    const probe = document.createElement('span')
    probe.style.cssText = `display:inline-block;height:1${unit}`
    e.append(probe)
    const height = probe.getBoundingClientRect().height
    probe.remove()
    return mm(height)
  }
  const holders = [...document.querySelectorAll('.label *')].filter(e => [...e.childNodes].some(n => n.nodeType === 3 && n.data.trim()))
  const quantity = document.querySelector('.label .quantity')
  return { x: Math.min(...holders.map(e => measured(e, 'ex'))), looked: holders.length, figures: quantity ? measured(quantity, 'cap') : null }
})

const browser = await puppeteer.launch({ executablePath: chromium, args: ['--no-sandbox', '--disable-gpu'] })
try {
  for (const { name, fiche = tart, settings, x, figures } of cases) {
    const fault = what => faults.push(`${name}: ${what}`)
    const file = join(work, `${name}.html`)
    writeFileSync(file, execFileSync(tamis, ['export', '--as', 'label', '--kitchen', join(root, 'tests/kitchen/kitchen.xml'), '--set', settings, join(root, fiche)]))
    const page = await browser.newPage()
    await page.setBypassCSP(true)
    await page.goto(`file://${file}`)
    await page.evaluate(axe.source)
    const found = await page.evaluate(() => window.axe.run(document, { runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'] }))
    for (const rule of found.violations) fault(`${rule.id}: ${rule.help}: ${rule.nodes[0].html.slice(0, 100)}`)
    if (found.passes.length < 12) fault(`axe looked at ${found.passes.length} rules only`)
    await page.emulateMediaType('print')
    const seen = await heights(page)
    if (seen.looked < 2) fault(`${seen.looked} pieces of text`)
    if (seen.x < x) fault(`a small x is ${seen.x.toFixed(2)} mm high, under ${x} mm`)
    if (figures && !(seen.figures >= figures)) fault(`the net quantity is ${seen.figures?.toFixed(2)} mm high, under ${figures} mm`)
    await page.emulateMediaType(null)
    const pdf = join(work, `${name}.pdf`)
    await page.pdf({ path: pdf, format: 'A4' })
    const pages = execFileSync(pdftotext, ['-layout', pdf, '-']).toString().split('\f').slice(0, -1)
    const trial = name === 'trial'
    if (!trial && pages.length !== 1) fault(`${pages.length} pages`)
    if (pages.join().includes('where each comes from') !== trial) fault(trial ? 'what it rests on is not on paper' : 'what it rests on is on paper')
    if (pages.join().includes('not for sale') !== trial) fault('the stamp is where it does not belong, or is not there')
    await page.close()
  }
} finally {
  await browser.close()
  rmSync(work, { recursive: true })
}
for (const line of faults) console.log(line)
console.log(faults.length ? `${faults.length} faults` : `${cases.length} labels looked at: nothing to say`)
process.exit(faults.length ? 1 : 0)
