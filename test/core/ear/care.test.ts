import { expect, test } from 'vitest';
import { CARE_TIMES } from '../../../kiosk/ear/recogniserCare.ts';

test('an engine that does not answer is waited for longer than a slow board lags behind: five seconds of sound at 0.36 of real time (measured, slowed six times), and four times as long', () => {
  expect(CARE_TIMES.answerWithinMs).toBeGreaterThan(4 * 0.36 * 5_000);
  expect(CARE_TIMES.loadWithinMs).toBeGreaterThan(CARE_TIMES.answerWithinMs);
});
