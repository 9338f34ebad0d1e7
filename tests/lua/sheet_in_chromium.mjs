// The sheet as people meet it: in Chromium, on phone, tablet and desk, by day and in a dim kitchen, and printed.
//   - WCAG 2.2 level A and AA by axe-core (npm); targets of 44 px (WCAG 2.5.5), reflow at 320 px (1.4.10)
//   - the measure: sentences 45 to 75 letters wide on a tablet and on paper (common practice), a little leeway
//   - paper, A4 and US Letter, by pdftotext: no heading at the foot of a page, no gate parted from its step, nothing but
//     greys
// TAMIS names the program. Needs Chromium, pdftotext, and axe-core and puppeteer-core in build-sheet/node_modules or
// NODE_PATH; says SKIPPED without. SHEET_SHOTS=folder keeps pictures of what was looked at.
import { execFileSync } from 'node:child_process'
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { find, findChromium, load, root, tamis } from './outside.mjs'

const chromium = findChromium()
const pdftotext = find(['pdftotext'])
const puppeteer = load('puppeteer-core')
const axe = load('axe-core')
const shots = process.env.SHEET_SHOTS
if (shots) mkdirSync(shots, { recursive: true })

const faults = []
const fault = (where, what) => faults.push(`${where}: ${what}`)

// Fiches that between them have all there is on a sheet.
const pear = 'tests/kitchen/desserts/buckwheat-pear-frame.fiche.xml'
const tart = 'tests/lua/sheet/apple-tart.fiche.xml'
const cases = [
  { name: 'dessert', fiche: pear },
  { name: 'two-systems', fiche: pear, settings: 'systems=both' },
  { name: 'two-batches', fiche: 'tests/against/real/usda-minestrone-h070.fiche.xml' },
  { name: 'variants', fiche: 'tests/against/real/usda-white-sauce-c07.fiche.xml' },
  { name: 'learner', fiche: tart, kitchen: 'tests/lua/sheet/kitchen.xml', settings: 'wording=learner' },
  { name: 'drawings', fiche: 'tests/kitchen/base/custard.fiche.xml', settings: 'curve=paper;flow=paper' },
  { name: 'photograph', fiche: 'plugins/sheet/tests/shortbread/case.fiche.xml', kitchen: 'tests/lua/sheet/kitchen.xml' },
]
const views = { phone: [360, 740], upright: [768, 1024], tablet: [1024, 768], desk: [1440, 900] }
const work = mkdtempSync(join(tmpdir(), 'tamis-sheet-'))

function sheet({ name, fiche, kitchen = 'tests/kitchen/kitchen.xml', settings = '' }) {
  const file = join(work, `${name}.html`)
  const words = ['export', '--as', 'sheet', '--kitchen', join(root, kitchen), ...(settings ? ['--set', settings] : [])]
  writeFileSync(file, execFileSync(tamis, [...words, join(root, fiche)]))
  return file
}

async function accessible(page, where) {
  await page.evaluate(axe.source)
  const found = await page.evaluate(() => window.axe.run(document, {
    runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'] }))
  for (const rule of found.violations) {
    fault(where, `${rule.id} (${rule.impact}): ${rule.help}: ${rule.nodes.slice(0, 3).map(n => n.html.slice(0, 100)).join(' … ')}`)
  }
  if (found.passes.length < 15) fault(where, `axe looked at ${found.passes.length} rules only`)
}

async function targets(page, where) {
  const small = await page.evaluate(() => [...document.querySelectorAll('a, summary, button, input')]
    .map(e => ({ box: e.getBoundingClientRect(), text: e.textContent.trim() }))
    .filter(({ box }) => box.width > 0 && (box.width < 44 || box.height < 43.5))
    .map(({ box, text }) => `${text} ${Math.round(box.width)}×${Math.round(box.height)}`))
  for (const one of small) fault(where, `target under 44 px: ${one}`)
}

// Letters that fit on a line, over the sentences that fill more than one.
const measure = page => page.evaluate(() => {
  let letters = 0, count = 0
  for (const p of document.querySelectorAll('.steps > li > p:not(.where, .pencil)')) {
    let width = 0
    const range = document.createRange()
    const texts = document.createTreeWalker(p, NodeFilter.SHOW_TEXT)
    for (let node = texts.nextNode(); node; node = texts.nextNode()) {
      range.selectNodeContents(node)
      for (const box of range.getClientRects()) width += box.width
    }
    if (width > 1.5 * p.clientWidth) { letters += p.textContent.length * p.clientWidth / width; count++ }
  }
  return count ? letters / count : null
})

async function screens(browser, name, file) {
  for (const [scheme, seen] of Object.entries({ light: Object.keys(views), dark: ['upright'] })) {
    for (const view of seen) {
      const [width, height] = views[view]
      const where = `${name}, ${view}, ${scheme}`
      const page = await browser.newPage()
      await page.setBypassCSP(true)
      await page.emulateMediaFeatures([{ name: 'prefers-color-scheme', value: scheme }])
      await page.setViewport({ width, height })
      await page.goto(`file://${file}`)
      await accessible(page, where)
      await targets(page, where)
      if (shots) await page.screenshot({ path: join(shots, `${name}-${view}-${scheme}.png`), fullPage: view === 'phone' })
      await page.close()
    }
  }
  const page = await browser.newPage()
  await page.setViewport({ width: 320, height: 640 })
  await page.goto(`file://${file}`)
  const over = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)
  if (over > 0) fault(`${name}, 320 px`, `runs ${over} px over the side`)
  await page.close()
}

async function paper(browser, name, file) {
  const page = await browser.newPage()
  await page.goto(`file://${file}`)
  await page.emulateMediaType('print')
  const colours = await page.evaluate(() => {
    const found = new Set()
    for (const e of document.querySelectorAll('body *')) {
      const style = getComputedStyle(e)
      for (const value of [style.color, style.backgroundColor, style.borderTopColor, style.borderLeftColor]) {
        const [r, g, b, a = 1] = value.match(/[\d.]+/g).map(Number)
        if (a > 0 && (r !== g || g !== b)) found.add(value)
      }
    }
    return [...found]
  })
  for (const colour of colours) fault(`${name}, print`, `not a grey: ${colour}`)
  const headings = await page.evaluate(() => [...document.querySelectorAll('h2, h3')].map(h => h.textContent.replace(/\s+/g, ' ').trim()))
  const gates = await page.evaluate(() => [...document.querySelectorAll('.gate')].map(g => ({
    gate: g.querySelector('p').textContent.trim().slice(0, 20), step: g.parentElement.querySelector('.number').textContent })))
  await page.emulateMediaType(null)
  for (const format of ['A4', 'Letter']) {
    const pdf = join(work, `${name}-${format}.pdf`)
    await page.pdf({ path: pdf, format, preferCSSPageSize: false })
    if (shots) {
      try { execFileSync('pdftoppm', ['-r', '80', '-png', pdf, join(shots, `${name}-${format}`)]) } catch { /* no pictures */ }
    }
    const pages = execFileSync(pdftotext, ['-layout', pdf, '-']).toString().replace(/\u00a0/g, ' ').split('\f').slice(0, -1)
    pages.forEach((words, i) => {
      const lines = words.split('\n').map(l => l.replace(/\s+/g, ' ').trim()).filter(Boolean)
      const where = `${name}, ${format}, page ${i + 1}`
      if (!lines.at(-1)?.endsWith(`${i + 1}/${pages.length}`)) fault(where, `the foot says "${lines.at(-1)}"`)
      if (headings.includes(lines.at(-2))) fault(where, `a heading at the foot: ${lines.at(-2)}`)
      for (const { gate, step } of gates) {
        if (words.includes(gate) && !new RegExp(`(^|\\s)${step}(\\s|$)`, 'm').test(words)) fault(where, `gate "${gate}" without step ${step}`)
      }
    })
  }
  await page.close()
}

async function measured(browser, name, file) {
  for (const [view, width, height, type] of [['tablet', 1024, 768, null], ['A4', 673, 1000, 'print']]) {
    const page = await browser.newPage()
    if (type) await page.emulateMediaType(type)
    await page.setViewport({ width, height })
    await page.goto(`file://${file}`)
    const letters = await measure(page)
    if (letters !== null && (letters < 42 || letters > 78)) fault(`${name}, ${view}`, `sentences ${letters.toFixed(0)} letters wide`)
    await page.close()
  }
}

const browser = await puppeteer.launch({ executablePath: chromium, args: ['--no-sandbox', '--disable-gpu'] })
try {
  for (const one of cases) {
    const file = sheet(one)
    if (/<script/i.test(readFileSync(file, 'utf8'))) fault(one.name, 'there is a script in the file')
    await screens(browser, one.name, file)
    await paper(browser, one.name, file)
    await measured(browser, one.name, file)
  }
} finally {
  await browser.close()
  rmSync(work, { recursive: true })
}
for (const line of faults) console.log(line)
console.log(faults.length ? `${faults.length} faults` : `${cases.length} sheets looked at: nothing to say`)
process.exit(faults.length ? 1 : 0)
