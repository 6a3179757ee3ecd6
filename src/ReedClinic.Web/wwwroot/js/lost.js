// While a page's live line to the studio is down, a quiet bar says so. It lies over nothing that works without one, unlike the framework's
// own dialog, which takes the whole page; and it is tried for until it is back, however long that takes.
const bar = document.getElementById("components-reconnect-modal");
const again = 10_000;

function show(isLost) {
  if (!isLost && "lost" in document.documentElement.dataset) dispatchEvent(new Event("studio-back"));
  document.documentElement.toggleAttribute("data-lost", isLost);
  const words = isLost ? bar.dataset.words : "";
  if (bar.textContent !== words) bar.textContent = words;
}

// What this page stood on is gone: it comes anew, once there is somebody to bring it. What waits in the tab stays there, and what has to be
// brought to the studio before goes first.
async function anew() {
  const answer = await fetch("/health/ready", { cache: "no-store" }).catch(() => null);
  if (!answer?.ok) return setTimeout(anew, again / 10);
  const first = [];
  dispatchEvent(new CustomEvent("studio-anew", { detail: first }));
  if ((await Promise.allSettled(first)).some((one) => one.status === "rejected")) return setTimeout(anew, again / 10);
  dispatchEvent(new Event("studio-way"));
  return location.reload();
}

async function retry() {
  try {
    if ((await Blazor.reconnect()) || (await Blazor.resumeCircuit())) show(false);
    else await anew();
  } catch {
    setTimeout(retry, again);
  }
}

bar.addEventListener("components-reconnect-state-changed", ({ detail: { state } }) => {
  show(state !== "hide");
  if (state === "rejected") void anew();
  else if (state === "paused") void retry();
  else if (state === "failed" || state === "resume-failed") setTimeout(retry, again);
});
