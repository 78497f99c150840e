/** The engine's compiled code, cut out of the package's worker by deploy/voskEngine.ts at build time. */
declare module 'vosk-engine' {
  const startVosk: unknown;
  export default startVosk;
}
