import { Session } from '../session.ts';
import { askedByKeys, askedFor, gluedUp, madeHeavy, plannedAndCut } from './byKeys.ts';
import { callsOfClocks } from './clocks.ts';
import { wordsOfTheKioskItself } from './ownWords.ts';
import { glanceFrom, nothingYet, note, walkFrom, type Said, type Walked } from './walk.ts';

/**
 * Everything that the kiosk can be brought to say, with the bench that listens meanwhile: every phrase of the grammar on an empty bench, on the demo piece, with a leg made heavy, amid a glue-up and amid
 * the cutting, and from each screen, question and kind of step that comes of it all that can be said there; what keys, files and instruments bring; what the clocks
 * call out; and the kiosk's own words. Nothing of it is a list of replies. Takes minutes; `glance` takes seconds, for it says two phrases of each row of talk, and answers what is asked.
 */
export function everythingSaid({ glance = false } = {}): Walked {
  const walked = nothingYet();
  const demo = Session.withDemo();
  for (const session of [demo, new Session(), madeHeavy(), ...askedFor(), gluedUp(walked), plannedAndCut(walked)]) (glance ? glanceFrom : walkFrom)(session, walked);
  askedByKeys(walked);
  callsOfClocks(Session.withDemo(), walked);
  for (const text of wordsOfTheKioskItself()) note(walked, { say: text }, demo.bench);
  return walked;
}

const NUMBER = /\b(?:zero|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|\w+teen|(?:twenty|thirty|forty|fifty|sixty|seventy|eighty|ninety)(?:-\w+)?|hundred|thousand|half|quarters?|\w+(?:teenths?|eighths?|seconds?|fourths?)|\d+)\b/gi;

/** One of each shape: two that differ in their numbers alone are as one. In the order in which they were come by. */
export function shapesOf({ said }: Walked): readonly Said[] {
  const byShape = new Map<string, Said>();
  for (const one of said.values()) {
    const shape = one.text.replaceAll(NUMBER, '#').replaceAll(/#(?:[ ,]+(?:and )?(?:a )?#)+/g, '#').toLowerCase();
    if (!byShape.has(shape)) byShape.set(shape, one);
  }
  return [...byShape.values()];
}
