// One microphone for whatever on the page listens: the first opens it, the last closes it. Nothing of the browser's own treatment of voices is
// wanted: it takes the crow of a reed for noise.
const wanted = { channelCount: 1, echoCancellation: false, noiseSuppression: false, autoGainControl: false };

/** This browser, or this page without https, can't listen at all. */
export class Unable extends Error {}

const reasons = { NotAllowedError: "noPermission", SecurityError: "noPermission", NotFoundError: "noMicrophone", OverconstrainedError: "noMicrophone" };

/** Which words tell why no microphone can be had. */
export const reasonOf = (trouble) => (trouble instanceof Unable ? "unable" : (reasons[trouble?.name] ?? "busy"));

// 48 kHz, as clips are read; a browser that takes a microphone only at its own rate gets that.
function join(stream) {
  for (const options of [{ sampleRate: 48_000, latencyHint: "interactive" }, { latencyHint: "interactive" }]) {
    const context = new AudioContext(options);
    try {
      return { context, source: context.createMediaStreamSource(stream) };
    } catch {
      void context.close();
    }
  }
  throw new Unable();
}

async function begin() {
  if (!navigator.mediaDevices?.getUserMedia || !globalThis.AudioWorkletNode) throw new Unable();
  const stream = await navigator.mediaDevices.getUserMedia({ audio: wanted });
  try {
    const opened = { stream, ...join(stream) };
    await opened.context.resume();
    return opened;
  } catch (trouble) {
    for (const track of stream.getTracks()) track.stop();
    throw trouble;
  }
}

let opened = null;
let listeners = 0;

function close(mine) {
  if (--listeners > 0 && opened === mine) return;
  if (opened === mine) {
    opened = null;
    listeners = 0;
  }
  void mine.then(
    ({ stream, context }) => {
      for (const track of stream.getTracks()) track.stop();
      void context.close().catch(() => {});
    },
    () => {},
  );
}

/**
 * Listens by a worklet of this folder.
 * @param {string} module The worklet's file.
 * @param {string} name What it registers.
 * @param {(told: any) => void} heard Gets what it tells.
 * @param {() => void} [gone] Is called when the microphone is pulled out.
 * @returns {Promise<{rate: number, stream: MediaStream, context: AudioContext, close: () => void}>} Fails with what reasonOf has words for.
 */
export async function listen(module, name, heard, gone) {
  listeners++;
  const mine = (opened ??= begin());
  let node = null;
  let ended = null;
  let isOpen = true;
  const leave = () => {
    if (!isOpen) return;
    isOpen = false;
    ended?.();
    if (node) {
      node.port.onmessage = null;
      node.disconnect();
    }
    close(mine);
  };
  try {
    const { stream, context, source } = await mine;
    await context.audioWorklet.addModule(new URL(`./${module}`, import.meta.url));
    node = new AudioWorkletNode(context, name, { numberOfInputs: 1, numberOfOutputs: 1, channelCount: 1, channelCountMode: "explicit" });
    node.port.onmessage = (event) => heard(event.data);
    source.connect(node);
    // What isn't on its way to a loudspeaker isn't computed: the worklet sends silence there.
    node.connect(context.destination);
    const tracks = stream.getAudioTracks();
    const lost = () => isOpen && gone?.();
    for (const track of tracks) track.addEventListener("ended", lost);
    ended = () => tracks.forEach((track) => track.removeEventListener("ended", lost));
    if (tracks.some((track) => track.readyState === "ended")) queueMicrotask(lost);
    return { rate: context.sampleRate, stream, context, close: leave };
  } catch (trouble) {
    leave();
    throw trouble;
  }
}
