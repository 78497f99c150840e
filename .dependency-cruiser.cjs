/** What the linter cannot see: circles. (The order of core's folders is held by eslint.config.js.) */
module.exports = {
  forbidden: [
    { name: 'no-circles', severity: 'error', comment: 'Files that need each other are one file, or need a third.', from: {}, to: { circular: true } },
    { name: 'core-stands-alone', severity: 'error', comment: 'core imports nothing but core (and valibot, for reading what others wrote).', from: { path: '^core/' }, to: { pathNot: ['^core/', '^node_modules/valibot/'] } },
    { name: 'kiosk-knows-no-server', severity: 'error', from: { path: '^kiosk/' }, to: { path: ['^deploy/', '^test/'] } },
    { name: 'nothing-unresolved', severity: 'error', from: {}, to: { couldNotResolve: true, pathNot: ['^vosk-engine$', '^trusted-types'] } },
  ],
  options: { doNotFollow: { path: 'node_modules' }, tsPreCompilationDeps: true, tsConfig: { fileName: 'tsconfig.json' }, enhancedResolveOptions: { exportsFields: ['exports'], conditionNames: ['import', 'node', 'default'], extensions: ['.ts', '.mts', '.mjs', '.js', '.json'] } },
};
