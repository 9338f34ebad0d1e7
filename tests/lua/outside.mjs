// What the tests in a browser and by npm's libraries stand on: where the project and its program are (TAMIS names another), the
// packages in build-sheet/node_modules or NODE_PATH, and commands. What is not there ends the test with SKIPPED.
import { execFileSync } from 'node:child_process'
import { createRequire } from 'node:module'
import { join, resolve } from 'node:path'

export const root = resolve(import.meta.dirname ?? '.', '../..')
export const tamis = process.env.TAMIS ?? join(root, 'build/tamis')

const skip = reason => { console.log(`SKIPPED: ${reason}`); process.exit(77) }

export function load(name) {
  const places = [join(root, 'build-sheet/'), ...(process.env.NODE_PATH ?? '').split(':').filter(Boolean).map(p => join(p, '/'))]
  for (const place of places) {
    for (const wanted of [name, join(place, name), join(place, 'node_modules', name)]) {
      try { return createRequire(place)(wanted) } catch (fault) { if (fault.code !== 'MODULE_NOT_FOUND') throw fault }
    }
  }
  return skip(`${name} is not installed (npm package)`)
}

export function find(commands) {
  for (const command of commands) {
    try { return execFileSync('which', [command]).toString().trim() } catch { /* the next one */ }
  }
  return skip(`${commands[0]} is not installed`)
}

export const findChromium = () => find(['chromium', 'chromium-browser', 'google-chrome'])
