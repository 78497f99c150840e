import { readDuration } from './duration.ts';
import type { Slot } from './slot.ts';

function lasting(...samples: readonly string[]): Slot<number> {
  return {
    longest: 10,
    read: (words) => {
      const durationMs = readDuration(words);
      return durationMs === undefined ? [] : [{ value: durationMs }];
    },
    samples: () => samples,
  };
}

/** 'thirty minutes', 'an hour and a half', 'three days' */
export const durationSlot = lasting(
  'five minutes', 'ten minutes', 'fifteen minutes', 'two minutes', 'three minutes', 'forty five minutes', 'an hour', 'an hour and a half', 'half an hour', 'two hours', 'a quarter of an hour', 'one hour and twenty minutes',
  'twenty four hours', 'a day', 'three days', 'one minute', 'ninety seconds', 'thirty seconds', 'fifty minutes', 'forty minutes', 'twelve hours', 'twenty minutes', 'thirty minutes',
);

/** As it stands before 'timer': 'thirty minute', 'two hour' */
export const spanSlot = lasting('thirty minute', 'twenty minute', 'five minute', 'ten minute', 'fifteen minute', 'forty five minute', 'ninety minute', 'fifty minute', 'one hour', 'two hour', 'twelve hour', 'thirty second', 'ninety second', 'three day', 'half hour');

/** As it stands after 'every', where an hour is 'hour'. */
export const intervalSlot: Slot<number> = {
  ...lasting('five minutes', 'ten minutes', 'fifteen minutes', 'twenty minutes', 'thirty minutes', 'forty minutes', 'half hour', 'hour'),
  read: (words) => [readDuration(words) ?? readDuration(['an', ...words])].flatMap((value) => (value === undefined ? [] : [{ value }])),
};
