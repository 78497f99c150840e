import { all, either, optional, rarely } from './expression.ts';
import { counted, RARE } from './numbers.ts';

const FEW = counted(2, 12);

/** 'thirty minutes', 'an hour and a half', 'two hours and ten minutes', 'a quarter of an hour', 'three days'. */
export const DURATION = either(
  all(counted(2, 99), optional('and a half'), 'minutes'), all(either('a', 'one'), 'minute', optional('and a half')), 'half a minute',
  'half an hour', 'a quarter of an hour', 'three quarters of an hour',
  all(either(all(either('an', 'one'), 'hour'), all(counted(2, 72), 'hours')), optional(either('and a half', 'and a quarter', 'and three quarters', all(optional('and'), counted(2, 59), 'minutes')))),
  all(FEW, 'and a half hours'), all(counted(5, 99), 'seconds'),
  all(either('a', 'one'), 'day'), all(counted(2, 30), 'days'), rarely(either(all(either('a', 'one'), 'week'), all(FEW, 'weeks')), RARE),
);

/** Before its noun: 'a thirty minute timer', 'a two hour timer'; the hour and a half as it is. */
export const SPAN = either(all(counted(1, 99), 'minute'), all(counted(1, 72), 'hour'), all(counted(5, 99), 'second'), rarely(all(counted(1, 30), 'day'), RARE), 'half hour', 'half an hour', 'an hour', 'an hour and a half', 'one hour and a half');

/** After 'every': to two hours. */
export const INTERVAL = either(all(counted(2, 99), 'minutes'), 'half hour', 'hour');
