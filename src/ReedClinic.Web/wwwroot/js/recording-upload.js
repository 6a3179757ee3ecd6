// Sends a file in pieces. After a lost connection it asks how much is there, and goes on from that place.
const pauses = [500, 1000, 2000, 4000, 8000, 15000];
// A while, or until this device is online again: whatever comes first.
export const wait = (milliseconds) =>
  new Promise((done) => {
    const go = () => {
      clearTimeout(timer);
      removeEventListener("online", go);
      done();
    };
    const timer = setTimeout(go, milliseconds);
    addEventListener("online", go);
  });

// Something that another try won't change.
export class Refused extends Error {
  constructor(words, status) {
    super(words);
    this.status = status;
  }
}

// Whoever sends isn't signed in any more; what was sent so far stays.
export class SignedOut extends Error {}

const hex = (bytes) => Array.from(new Uint8Array(bytes), (one) => one.toString(16).padStart(2, "0")).join("");

// Tries until there is an answer that says something about what was sent.
const ask = async (address, options, told) => {
  for (let tries = 0; ; tries++) {
    let answer = null;
    try {
      answer = await fetch(address, { ...options, redirect: "manual" });
    } catch {
      // No answer at all is told like one that asks to come back later.
    }
    if (answer?.type === "opaqueredirect" || answer?.status === 401) {
      throw new SignedOut();
    }
    if (answer && answer.status !== 429 && answer.status < 500) {
      return answer;
    }
    if (answer?.status === 507 || tries >= 40) {
      throw new Refused((await answer?.json().catch(() => null))?.problem, answer?.status);
    }
    told?.waiting?.();
    const asked = Number(answer?.headers.get("retry-after")) * 1000;
    await wait(asked || pauses[Math.min(tries, pauses.length - 1)]);
  }
};

const read = async (answer) => {
  const said = answer.headers.get("content-type")?.includes("json") ? await answer.json() : {};
  if (!answer.ok && answer.status !== 409) {
    throw new Refused(said.problem, answer.status);
  }
  return said;
};

/**
 * Sends a blob as a recording of a reed.
 * @param {Blob} blob The whole file.
 * @param {{reed: string, kind: string, token: string, operation?: string, words?: string, pass?: string, atSequence?: number, retest?: boolean}} what
 *   Of which reed, what it is, and the page's form token; `retest` where it is a test between two steps of the work.
 * @param {{progress?: (done: number) => void, waiting?: () => void}} [told] Is called as it goes on, from 0 to 1.
 * @returns {Promise<{id: string, type: string, bytes: number, milliseconds: number | null}>}
 */
export async function send(blob, what, told) {
  const headers = { RequestVerificationToken: what.token };
  const fields = new URLSearchParams({ Reed: what.reed, Kind: what.kind, Bytes: blob.size, Words: what.words ?? "" });
  fields.set("Operation", what.operation || crypto.randomUUID());
  if (what.pass) fields.set("Pass", what.pass);
  if (what.atSequence !== undefined) fields.set("AtSequence", what.atSequence);
  if (what.retest) fields.set("retest", "true");

  const going = await read(await ask("/recordings", { method: "POST", headers, body: fields }, told));
  const sum = hex(await crypto.subtle.digest("SHA-256", await blob.arrayBuffer()));
  for (let at = going.received; at < blob.size; ) {
    const body = blob.slice(at, at + going.piece);
    const answer = await ask(`/recordings/${going.id}/at/${at}`, { method: "PUT", headers, body }, told);
    at = (await read(answer)).received;
    told?.progress?.(at / blob.size);
  }
  const end = new URLSearchParams({ Sha256: sum, Operation: crypto.randomUUID() });
  return read(await ask(`/recordings/${going.id}/done`, { method: "POST", headers, body: end }, told));
}

// Where a page says so, only what it tells of this reed is drawn anew: nothing that was ticked or typed elsewhere on it is lost.
const freshen = (page, id, place) => {
  const drawn = new DOMParser().parseFromString(page, "text/html").getElementById(id);
  if (!drawn) return false;
  document.getElementById(id).replaceWith(drawn);
  const there = drawn.querySelector(`[id="${place}"]`) ?? drawn;
  there.tabIndex = -1;
  there.focus();
  return true;
};

// What is removed there is taken out in place too.
const remove = async (event) => {
  const form = event.target;
  if (!(form instanceof HTMLFormElement) || !form.matches("[data-in-place] .remove form")) {
    return;
  }
  event.preventDefault();
  const section = form.closest("section.recordings");
  const answer = await fetch(form.action, { method: "POST", body: new URLSearchParams(new FormData(form)) }).catch(() => null);
  const went = answer?.ok && new URL(answer.url).pathname === location.pathname && freshen(await answer.text(), section.id, section.id);
  if (!went) {
    form.submit();
  }
};

// Every form that is marked as one for a recording; without this script it goes whole to a page.
const submit = async (event) => {
  const form = event.target;
  if (!(form instanceof HTMLFormElement) || !form.dataset.recording) {
    return;
  }
  event.preventDefault();
  if (form.dataset.busy) {
    return;
  }
  const value = (name) => form.querySelector(`[name="${name}"]`)?.value ?? "";
  const [status, problem, bar] = ["[data-status]", "[data-problem]", "progress"].map((one) => form.querySelector(one));
  const refuse = (words) => {
    problem.textContent = words;
    problem.hidden = !words;
    const field = form.elements.namedItem("File");
    field.setAttribute("aria-invalid", words ? "true" : "false");
    // What is wrong stands beside the field, which may have been scrolled away since.
    if (words) {
      field.focus({ preventScroll: true });
      problem.scrollIntoView({ block: "nearest" });
    }
  };
  // What was recorded in the page goes before a file that was chosen: see recorder.js.
  const file = form.recorded ?? form.elements.namedItem("File").files[0];
  refuse(file ? "" : form.dataset.noFile);
  if (!file) {
    return;
  }
  form.dataset.busy = "yes";
  bar.hidden = false;
  // A take is told where it was made, a file beside its field.
  const isTake = file === form.recorded;
  const going = (words) => {
    status.textContent = isTake ? "" : words;
    form.dispatchEvent(new CustomEvent("going", { detail: words }));
  };
  going(form.dataset.sending);
  try {
    const what = { reed: form.dataset.of, kind: form.dataset.recording, token: value("__RequestVerificationToken"), operation: value("Operation"), words: value("Words") };
    const kept = await send(file, what, {
      progress: (done) => {
        bar.value = done;
        going(form.dataset.sending);
      },
      waiting: () => going(form.dataset.waiting),
    });
    // Back to the place, where the page says that it is kept and leads to what it says.
    const back = new URL(value("Back") || location.href, location.href);
    back.searchParams.set("kept", kept.id);
    back.hash = `recording-${kept.id}`;
    if (!form.closest("[data-in-place]")) {
      dispatchEvent(new Event("studio-way"));
      return location.assign(back);
    }
    const page = await fetch(back).catch(() => null);
    if (!page?.ok || !freshen(await page.text(), form.closest("section.recordings").id, `recording-${kept.id}`)) {
      bar.hidden = true;
      status.textContent = form.dataset.kept;
    }
  } catch (trouble) {
    const words = trouble instanceof SignedOut ? form.dataset.signedOut : (trouble instanceof Refused && trouble.message) || form.dataset.unsent;
    refuse(isTake ? "" : words);
    // What was refused is over: the next file is another one.
    const operation = form.querySelector('[name="Operation"]');
    if (trouble instanceof Refused && trouble.message) operation.value = crypto.randomUUID();
    bar.hidden = true;
    status.textContent = "";
    delete form.dataset.busy;
    form.dispatchEvent(new CustomEvent("unsent", { detail: words }));
  }
};

if (!globalThis.recordingForms) {
  globalThis.recordingForms = true;
  document.addEventListener("submit", submit);
  document.addEventListener("submit", remove);
}
