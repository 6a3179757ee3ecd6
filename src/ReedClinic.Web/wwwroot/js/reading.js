// The page of a reading: it rights itself when the reading is there, and shows on its plots what is being played.
const page = document.querySelector("[data-reading]");
const rest = (milliseconds) => new Promise((done) => setTimeout(done, milliseconds));

// The question is answered when something has changed, or after a while; between two there are two seconds at least.
const waitFor = async (state, address) => {
  for (;;) {
    const pause = rest(2000);
    try {
      const answer = await fetch(`${address}?since=${encodeURIComponent(state)}`, { headers: { Accept: "application/json" }, redirect: "manual" });
      if (answer.status === 404 || answer.type === "opaqueredirect") {
        return;
      }
      if (answer.ok && (await answer.json()).state !== state) {
        location.reload();
        return;
      }
    } catch {
      // No answer: asked again.
    }
    await pause;
  }
};

const follow = (sound, plots, all) => {
  const [seconds, zero] = [Number(plots.dataset.seconds), Number(plots.dataset.zero)];
  const place = plots.querySelector("[data-place]");
  place.closest("[data-place-row]").hidden = false;
  const show = (at) => {
    const share = Math.min(1, Math.max(0, at / seconds));
    for (const plot of all) {
      const head = plot.querySelector(".play-head");
      const left = Number(plot.dataset.left);
      head.hidden = at <= 0 && sound.paused;
      head.style.left = `${100 * (left + share * (Number(plot.dataset.right) - left))}%`;
    }
    place.value = at.toFixed(2);
    const since = Math.round(100 * (at - zero)) / 100;
    place.setAttribute("aria-valuetext", place.dataset.words.replace("{0}", `${since < 0 ? "−" : ""}${Math.abs(since).toFixed(2)}`));
  };
  const go = (at) => {
    sound.currentTime = Math.min(seconds, Math.max(0, at));
    show(sound.currentTime);
  };
  let frame = 0;
  const run = () => {
    show(sound.currentTime);
    frame = sound.paused ? 0 : requestAnimationFrame(run);
  };
  sound.addEventListener("play", () => {
    frame ||= requestAnimationFrame(run);
  });
  for (const name of ["pause", "seeked", "ended"]) {
    sound.addEventListener(name, () => show(sound.currentTime));
  }
  place.addEventListener("input", () => go(Number(place.value)));
  for (const plot of all) {
    plot.addEventListener("click", (event) => {
      const box = plot.getBoundingClientRect();
      const left = Number(plot.dataset.left);
      go((seconds * ((event.clientX - box.left) / box.width - left)) / (Number(plot.dataset.right) - left));
    });
  }
};

if (page) {
  if (["Waiting", "BeingRead"].includes(page.dataset.reading)) {
    waitFor(page.dataset.reading, page.dataset.stateAt);
  }
  const sound = page.querySelector("[data-sound]");
  const plots = page.querySelector("[data-seconds]");
  if (sound && plots) {
    follow(sound, plots, page.querySelectorAll("[data-plot]"));
  }
}
