// The page for the web as others read it, for fiches of the demo kitchen and of printed sources:
//   - the data: JSON-LD expanded by a JSON-LD library (npm: jsonld) with the terms of https://schema.org; every property that is
//     used is one of the type it stands in (schema.org, from memory of the vocabulary), and what readers of recipes require is
//     there: name, recipeIngredient, recipeInstructions with text; durations as ISO 8601
//   - the page: html-validate (npm), axe-core (npm) in Chromium for WCAG 2.2 A and AA, nothing over the side at 320 px, and
//     paper, A4 and Letter: no heading at the foot of a page, nothing but greys
// TAMIS names the program. Says SKIPPED without Chromium, pdftotext or the packages in build-sheet/node_modules or NODE_PATH.
// PAGE_SHOTS=folder keeps pictures.
import { execFileSync } from 'node:child_process'
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { find, findChromium, load, root, tamis } from './outside.mjs'

const chromium = findChromium()
const pdftotext = find(['pdftotext'])
const puppeteer = load('puppeteer-core')
const axe = load('axe-core')
const jsonld = load('jsonld')
const { HtmlValidate } = load('html-validate')
const shots = process.env.PAGE_SHOTS
if (shots) mkdirSync(shots, { recursive: true })

const faults = []
const work = mkdtempSync(join(tmpdir(), 'page-'))
const fiches = ['kitchen/desserts/damson-almond-tart', 'kitchen/desserts/quince-hazelnut-bay', 'kitchen/base/custard', 'kitchen/mains/braised-ox-cheek',
  'kitchen/mains/duck-breast-chips', 'against/real/usda-peach-cobbler-b18', 'against/real/farmer-charlotte-russe', 'lua/sheet/apple-tart']

const thing = ['name', 'description', 'image', 'url']
const types = {
  Recipe: [...thing, 'inLanguage', 'author', 'publisher', 'datePublished', 'dateModified', 'recipeYield', 'recipeCategory', 'keywords', 'prepTime',
    'cookTime', 'totalTime', 'tool', 'recipeIngredient', 'recipeInstructions', 'nutrition', 'hasPart'],
  HowToSection: [...thing, 'itemListElement'], HowToStep: [...thing, 'text'], HowToTool: thing, Organization: thing, Person: thing,
  NutritionInformation: [...thing, 'servingSize', 'calories', 'fatContent', 'saturatedFatContent', 'carbohydrateContent', 'sugarContent', 'fiberContent',
    'proteinContent', 'sodiumContent'],
}

// The terms without the network: every term is in one vocabulary, as the published context says.
const documentLoader = async url => {
  if (!/^https?:\/\/schema\.org\/?$/.test(url)) throw new Error(`asked for ${url}`)
  return { contextUrl: null, documentUrl: url, document: { '@context': { '@vocab': 'http://schema.org/' } } }
}

function walk(node, fault) {
  const type = node['@type']?.[0]?.replace('http://schema.org/', '')
  if (!types[type]) return fault(`type ${node['@type']}`)
  for (const [iri, values] of Object.entries(node)) {
    if (iri.startsWith('@')) continue
    const name = iri.replace('http://schema.org/', '')
    if (!types[type].includes(name)) fault(`${type} has no ${name}`)
    for (const value of values) {
      if (value['@type'] && !('@value' in value)) walk(value, fault)
      else if (String(value['@value']).trim() === '') fault(`${type} ${name} is empty`)
      else if (name.endsWith('Time') && !/^P(\d+D)?(T(\d+H)?(\d+M)?)?$/.test(value['@value'])) fault(`${name} ${value['@value']}`)
    }
  }
  const needs = { Recipe: ['name', 'recipeIngredient'], HowToStep: ['text'], HowToSection: ['name', 'itemListElement'] }[type] ?? ['name']
  if (type === 'NutritionInformation') needs.splice(0, 1, 'calories', 'servingSize')
  for (const need of needs) if (!node[`http://schema.org/${need}`]) fault(`${type} without ${need}`)
}

async function data(html, fault) {
  const scripts = [...html.matchAll(/<script type="application\/ld\+json">([\s\S]*?)<\/script>/g)]
  if (scripts.length !== 1 || (html.match(/<script/g) ?? []).length !== 1) return fault(`${scripts.length} scripts of data`)
  const read = JSON.parse(scripts[0][1])
  const [recipe] = await jsonld.expand(read, { documentLoader, safe: true })
  walk(recipe, fault)
  if (!recipe['http://schema.org/recipeInstructions']) fault('no instructions')
  if (!recipe['http://schema.org/recipeYield']) fault('no yield')
}

const validator = new HtmlValidate({ extends: ['html-validate:recommended', 'html-validate:a11y'],
  rules: { 'void-style': 'off', 'no-inline-style': 'off', 'long-title': 'off', 'no-trailing-whitespace': 'off' } })

async function valid(html, fault) {
  const report = await validator.validateString(html)
  for (const { messages } of report.results) for (const m of messages) fault(`${m.line}:${m.column} ${m.ruleId}: ${m.message}`)
}

async function screens(browser, name, file, fault) {
  for (const [view, width, height, scheme] of [['desk', 1280, 900, 'light'], ['phone', 390, 844, 'light'], ['phone', 390, 844, 'dark']]) {
    const page = await browser.newPage()
    await page.setBypassCSP(true)
    await page.emulateMediaFeatures([{ name: 'prefers-color-scheme', value: scheme }])
    await page.setViewport({ width, height })
    await page.goto(`file://${file}`)
    await page.evaluate(axe.source)
    const found = await page.evaluate(() => window.axe.run(document, {
      runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'] }))
    for (const rule of found.violations) fault(`${view}, ${scheme}: ${rule.id}: ${rule.help}: ${rule.nodes[0].html.slice(0, 100)}`)
    if (found.passes.length < 15) fault(`axe looked at ${found.passes.length} rules only`)
    const small = await page.evaluate(() => [...document.querySelectorAll('a, summary, button, input')].filter(e => {
      const box = e.getBoundingClientRect()
      return box.width > 0 && (box.width < 44 || box.height < 43.5)
    }).map(e => e.textContent.trim()))
    for (const one of small) fault(`target under 44 px: ${one}`)
    if (shots) await page.screenshot({ path: join(shots, `${name}-${view}-${scheme}.png`), fullPage: true })
    await page.close()
  }
  const page = await browser.newPage()
  await page.setViewport({ width: 320, height: 640 })
  await page.goto(`file://${file}`)
  const over = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)
  if (over > 0) fault(`320 px: runs ${over} px over the side`)
  await page.close()
}

async function paper(browser, name, file, fault) {
  const page = await browser.newPage()
  await page.goto(`file://${file}`)
  await page.emulateMediaType('print')
  const colours = await page.evaluate(() => [...new Set([...document.querySelectorAll('body *')].flatMap(e => {
    const style = getComputedStyle(e)
    return [style.color, style.backgroundColor, style.borderLeftColor].filter(value => {
      const [r, g, b, a = 1] = value.match(/[\d.]+/g).map(Number)
      return a > 0 && (r !== g || g !== b)
    })
  }))])
  for (const colour of colours) fault(`print: not a grey: ${colour}`)
  const headings = await page.evaluate(() => [...document.querySelectorAll('h2, h3')].map(h => h.textContent.replace(/\s+/g, ' ').trim()))
  await page.emulateMediaType(null)
  for (const format of ['A4', 'Letter']) {
    const pdf = join(work, `${name}-${format}.pdf`)
    await page.pdf({ path: pdf, format })
    if (shots) try { execFileSync('pdftoppm', ['-r', '60', '-png', pdf, join(shots, `${name}-${format}`)]) } catch { /* no pictures */ }
    const pages = execFileSync(pdftotext, ['-layout', pdf, '-']).toString().replace(/\u00a0/g, ' ').split('\f').slice(0, -1)
    pages.forEach((words, i) => {
      const last = words.split('\n').map(l => l.replace(/\s+/g, ' ').trim()).filter(Boolean).at(-1)
      if (headings.includes(last)) fault(`${format}, page ${i + 1}: a heading at the foot: ${last}`)
    })
  }
  await page.close()
}

const browser = await puppeteer.launch({ executablePath: chromium, args: ['--no-sandbox', '--disable-gpu'] })
try {
  for (const fiche of fiches) {
    const name = fiche.split('/').at(-1)
    const fault = what => faults.push(`${name}: ${what}`)
    const settings = ['--set', 'category=dessert;published=2026-11-27']
    const html = execFileSync(tamis, ['export', '--as', 'web', ...settings, '--kitchen', join(root, 'tests/kitchen/kitchen.xml'), join(root, 'tests', `${fiche}.fiche.xml`)]).toString()
    const file = join(work, `${name}.html`)
    writeFileSync(file, html)
    await data(html, fault)
    await valid(html, fault)
    await screens(browser, name, file, fault)
    await paper(browser, name, file, fault)
  }
} finally {
  await browser.close()
  rmSync(work, { recursive: true })
}
for (const line of faults) console.log(line)
console.log(faults.length ? `${faults.length} faults` : `${fiches.length} pages looked at: nothing to say`)
process.exit(faults.length ? 1 : 0)
