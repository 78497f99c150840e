import { rowsOf } from '../pattern.ts';

const air = rowsOf('air');
const glue = rowsOf('glue');

/** Wood, air and glue. */
export const CRAFT_ROWS = [
  air('the air of the shop', ['[the] shop [is|is at] {degrees} [[and] {percent?} [humidity]]', 'it is {degrees} [[and] {percent?} [humidity]] [in here|in the shop]'], ({ degrees, percent }) => ({ kind: 'air', place: 'shop', by: 'said', tempC: degrees, ...(percent === undefined ? {} : { humidityPercent: percent }) })),
  air('the humidity of the shop', ['[the] shop [is|is at] {percent} [humidity]', '[the] humidity [is] {percent}', '{percent} humidity'], ({ percent }) => ({ kind: 'air', place: 'shop', by: 'said', humidityPercent: percent })),
  air('how warm the wood is', ['[the] wood is [at] {degrees}'], ({ degrees }) => ({ kind: 'air', place: 'wood', by: 'said', tempC: degrees })),
  air('how warm the glue is', ['[the] glue is [at] {degrees}'], ({ degrees }) => ({ kind: 'air', place: 'glue', by: 'said', tempC: degrees })),
  air('the driest month of the house', ['[the] driest month is {degrees} [and] {percent} [humidity]'], ({ degrees, percent }) => ({ kind: 'air', place: 'house dry', by: 'said', tempC: degrees, humidityPercent: percent })),
  air('the dampest month of the house', ['[the] (dampest|wettest) month is {degrees} [and] {percent} [humidity]'], ({ degrees, percent }) => ({ kind: 'air', place: 'house damp', by: 'said', tempC: degrees, humidityPercent: percent })),
  air('the moisture of the stock', ['[the] (stock|lumber|wood|boards) (is|are) [at] {moisture} [moisture]', '[the] moisture [of the stock] [is] {moisture}'], ({ moisture }) => ({ kind: 'stock moisture', percent: moisture })),
  air('what wood comes to here', ['what does [the] wood come to [here|in this air]', '[what is the] moisture in this air'], () => ({ kind: 'wood in this air' })),
  air('whether the stock is ready', ['is [the] (stock|lumber|wood) (ready|dry) [enough]', 'are [the] boards (ready|dry) [enough]'], () => ({ kind: 'is the stock ready' })),
  air('what the top does in a year', ['what (will|does) [the] top do [in a year|over the year]'], () => ({ kind: 'top in a year' })),
  air('what a part does in a year', ['how much (will|does) [the] {parts} (move|shrink|swell)'], ({ parts: { part } }) => ({ kind: 'top in a year', part })),
  air('the bow of a part at rest', ['[the] bow of [the] {part} is {gap}', '{part} bow [is] {gap}'], ({ part, gap }) => ({ kind: 'rest seen', ...part, bow: gap })),
  air('the wind of a part at rest', ['[the] wind of [the] {part} is {gap}', '{part} wind [is] {gap}'], ({ part, gap }) => ({ kind: 'rest seen', ...part, wind: gap })),
  air('the weight of a part at rest', ['[the] {part} weighs {grams}', '[the] weight of [the] {part} is {grams}'], ({ part, grams }) => ({ kind: 'rest seen', ...part, grams })),
  air('whether a part is settled', ['(is|has) [the] {part} settled', 'is [the] {part} still moving'], ({ part }) => ({ kind: 'is it settled', ...part })),
  air('the scale of degrees', ['use celsius', 'degrees celsius'], () => ({ kind: 'set', setting: { temperature: 'celsius' } })),
  air('the other scale of degrees', ['use fahrenheit', 'degrees fahrenheit'], () => ({ kind: 'set', setting: { temperature: 'fahrenheit' } })),
  glue('whether the glue will work', ['can i glue [tonight|now|today]', 'will (the|this) glue work [tonight|now|today]', 'is it warm enough [to glue]', 'is it too cold [to glue]', 'how warm must it be'], () => ({ kind: 'glue tonight' })),
  glue('whether a glue-up may begin', ['(am i|are we|is it) ready to glue [up]', 'can i (glue [it] up|start gluing) [now]'], () => ({ kind: 'ready to glue' })),
  air('the air, as it was told', ['how (warm|cold|damp) is (it|the shop)', 'what is the (temperature|humidity|moisture)', 'how dry is the (wood|stock)'], () => ({ kind: 'what air' })),
  glue('how long the clamps stay on', ['(what|how long) is the (clamp|clamping) time', '(is|when is) the glue (dry|cured) [yet]', 'how long until the glue is dry', 'how long does the glue (need|take) [to dry]', '(when (can|may) i|how long (until|before) i can) (work|plane|sand|chop) [on] it'], () => ({ kind: 'glue time', which: 'clamp' })),
  glue('how long the glue stays open', ['(what|how long) is the open time', 'how long does the glue stay open', '(what|which) glue (is (it|this)|do i use|am i using)'], () => ({ kind: 'glue time', which: 'open time' })),
  glue('how long to bring it inside', ['how long to warm [it|the wood|the glue]', 'how long (must|do) i bring (it|the wood|the glue) inside'], () => ({ kind: 'how long to warm' })),
  glue('how many clamps', ['how many clamps [do i (need|have)]', 'how much glue [do i need]'], () => ({ kind: 'how many clamps' })),
  glue('what a clamp presses', ['(my|the) clamps press {pounds}', '(a|one|my|each) clamp presses {pounds}'], ({ pounds }) => ({ kind: 'set', setting: { clampLbf: pounds } })),
  glue('the open time on the label', ['[the] label [says] open time [is] {duration}'], ({ duration }) => ({ kind: 'label', label: { openMinutes: duration / 60_000 } })),
  glue('the clamp time on the label', ['[the] label [says] clamp time [is] {duration}'], ({ duration }) => ({ kind: 'label', label: { clampMinutes: duration / 60_000 } })),
  glue('the closed time on the label', ['[the] label [says] closed time [is] {duration}'], ({ duration }) => ({ kind: 'label', label: { closedMinutes: duration / 60_000 } })),
  glue('the full cure on the label', ['[the] label [says] full cure [is] {duration}'], ({ duration }) => ({ kind: 'label', label: { fullCureHours: duration / 3_600_000 } })),
  glue('the lowest temperature on the label', ['[the] label [says] lowest temperature [is] {degrees}', '[the] label [says] not under {degrees}'], ({ degrees }) => ({ kind: 'label', label: { lowestC: degrees } })),
  glue('a rehearsal', ['rehearse [it|the glue up]', '(start|begin) [a|the] rehearsal', 'rehearsal', 'dry run'], () => ({ kind: 'begin gluing', mode: 'rehearsal' })),
  glue('the glue-up', ['(start|begin) gluing', '(start|begin) the glue up', 'glue it'], () => ({ kind: 'begin gluing', mode: 'glue' })),
  glue('leave the glue-up', ['(leave|stop) (gluing|the glue up|the rehearsal|rehearsing)'], () => ({ kind: 'leave gluing' })),
  glue('divide the glue-up', ['divide (it|the glue up)', 'split (it|the glue up)'], () => ({ kind: 'divide gluing' })),
];
