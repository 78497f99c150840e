import { randomNumbers, RATE_HZ } from './sound.ts';

/** A shop as a microphone in it hears it. */
interface Room {
  /** Length, width and height in metres. */
  readonly metres: readonly [number, number, number];
  /** Time in which a sound dies away by 60 dB, in seconds. */
  readonly reverberationSeconds: number;
}

/** A single garage with boards on its walls: 6 by 3.5 by 2.5 m, with the reverberation of a furnished room (common practice, no source). */
export const SHOP: Room = { metres: [6, 3.5, 2.5], reverberationSeconds: 0.5 };

const SOUND_METRES_PER_SECOND = 343;
const MOST_ECHOES = 8;

/**
 * How a sound that far away arrives: the direct sound and its mirror images in walls, floor and ceiling (the image method of Allen and Berkley, 1979), all walls
 * alike, their absorption by Eyring's formula from the reverberation time; later than 50 ms noise that dies away by the same law. The sound 1 m away in the open has strength 1.
 * @param metresAway from the mouth to the microphone, less than the room allows
 */
export function roomResponse(metresAway: number, { metres: [length, width, height], reverberationSeconds }: Room = SHOP): Float32Array {
  const volume = length * width * height;
  const surface = 2 * (length * width + length * height + width * height);
  const reflected = Math.exp((-0.161 * volume) / (2 * surface * reverberationSeconds));
  const response = new Float32Array(Math.round(reverberationSeconds * RATE_HZ));
  const microphone = [0.4, width / 2 + 0.2, 1.2] as const;
  const mouth = [0.4 + Math.sqrt(metresAway ** 2 - 0.5 ** 2), width / 2 - 0.2, 1.5] as const;
  for (const [along, times] of images(mouth[0], length, microphone[0])) {
    for (const [across, moreTimes] of images(mouth[1], width, microphone[1])) {
      for (const [up, upTimes] of images(mouth[2], height, microphone[2])) {
        const distance = Math.hypot(along, across, up);
        const at = Math.round((distance / SOUND_METRES_PER_SECOND) * RATE_HZ);
        if (at < 0.05 * RATE_HZ) response[at] = (response[at] ?? 0) + reflected ** (times + moreTimes + upTimes) / distance;
      }
    }
  }
  addTail(response, volume, reverberationSeconds);
  return response;
}

/** A sound after the room: as long as the sound and the room's response together. */
export function inRoom(sound: Float32Array, response: Float32Array): Float32Array {
  const heard = new Float32Array(sound.length + response.length);
  const echoes = [...response.entries()].filter(([, strength]) => strength !== 0);
  for (const [delay, strength] of echoes) {
    for (let at = 0; at < sound.length; at += 1) heard[at + delay] = (heard[at + delay] ?? 0) + strength * (sound[at] ?? 0);
  }
  return heard;
}

/** The places of a source and its images along one side of the room, seen from the microphone, each with the walls that it met. */
function* images(source: number, side: number, microphone: number): Generator<readonly [number, number]> {
  for (let order = -MOST_ECHOES; order <= MOST_ECHOES; order += 1) {
    yield [2 * order * side + source - microphone, Math.abs(2 * order)];
    yield [2 * order * side - source - microphone, Math.abs(2 * order - 1)];
  }
}

/** The late sound: its energy where it begins is that of a diffuse field (16 pi / absorption, beside the direct sound at 1 m). */
function addTail(response: Float32Array, volume: number, reverberationSeconds: number): void {
  const random = randomNumbers(12);
  const absorption = (0.161 * volume) / reverberationSeconds;
  const decayPerSecond = 6.91 / reverberationSeconds;
  // The energy of the whole diffuse field, spread over an exponential that begins with the direct sound.
  const perSample = ((16 * Math.PI) / absorption) * ((2 * decayPerSecond) / RATE_HZ);
  for (let at = Math.round(0.05 * RATE_HZ); at < response.length; at += 1) {
    response[at] = (response[at] ?? 0) + Math.sqrt(3 * perSample) * Math.exp((-decayPerSecond * at) / RATE_HZ) * (2 * random() - 1);
  }
}
