import type { KioskView } from '../hostPort.ts';

/** The model after the chosen one, of those that can be used. */
export function nextModel(models: KioskView['hearing']['models']): string {
  const usable = models.filter((model) => model.usable);
  return usable[(usable.findIndex(({ chosen }) => chosen) + 1) % Math.max(1, usable.length)]?.name ?? '';
}
