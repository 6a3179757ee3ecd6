// Keeps what is being typed: after a pause, and the moment the page is left. Without it every screen's own button still saves.
const pause = 1500;
const again = 5000;
const form = document.querySelector("form[data-draft]");

if (form) {
  const trouble = document.getElementById("draft-trouble");
  const note = document.getElementById("draft-note");
  let timer = 0;
  let typed = false;
  let saving = null;

  const say = (text, wrong) => {
    if (trouble) {
      trouble.hidden = !wrong;
      trouble.textContent = wrong ? text : "";
    }
    if (note && (text || wrong)) {
      note.textContent = wrong ? "" : text;
    }
  };

  // Beside each field stand the cautions that its words call for; what stands already is left, so that it isn't read out again.
  const caution = (said) => {
    for (const place of form.querySelectorAll("[data-cautions]")) {
      const wanted = said[place.dataset.cautions] ?? [];
      const lines = [...place.querySelectorAll("p")].map((line) => line.textContent);
      if (wanted.join("\n") !== lines.join("\n")) {
        place.replaceChildren(...wanted.map((words) => Object.assign(document.createElement("p"), { textContent: words })));
      }
    }
  };

  const send = async () => {
    const fields = new FormData(form);
    fields.delete("_handler");
    typed = false;
    let later = false;
    try {
      const answer = await fetch(form.dataset.draft, { method: "POST", body: new URLSearchParams(fields), keepalive: true });
      const said = answer.headers.get("content-type")?.includes("json") ? await answer.json() : {};
      if (answer.ok && said.mark) {
        form.elements.namedItem("Mark").value = said.mark;
        caution(said.cautions ?? {});
      } else {
        typed = true;
        later = answer.status === 429 || answer.status >= 500;
      }
      // Whoever was signed out is led to another page, which is no answer to this.
      const kept = answer.ok && Boolean(said.mark);
      say(said.note ?? (kept ? "" : answer.redirected ? form.dataset.out : form.dataset.unsaved), !kept);
    } catch {
      typed = true;
      later = true;
      say(form.dataset.unsaved, true);
    }
    if (later) {
      clearTimeout(timer);
      timer = setTimeout(save, again);
    }
  };

  // One save at a time: each one needs the mark that the last one brought back.
  const save = () => {
    clearTimeout(timer);
    if (typed) {
      const mine = (saving ?? Promise.resolve())
        .then(() => (typed ? send() : undefined))
        .finally(() => (saving = saving === mine ? null : saving));
      saving = mine;
    }
    return saving;
  };

  const heard = (event) => {
    // Typing another number chooses "another number".
    const { name, value } = event.target;
    if (name?.endsWith("Another") && value.trim()) {
      form.elements.namedItem(name.slice(0, -"Another".length)).value = "another";
    }
    typed = true;
    clearTimeout(timer);
    timer = setTimeout(save, pause);
  };

  form.addEventListener("input", heard);
  form.addEventListener("submit", async (event) => {
    clearTimeout(timer);
    if (saving && !form.dataset.settled) {
      event.preventDefault();
      await saving;
      form.dataset.settled = "yes";
      // A form that is still telling about one submission doesn't take another: ask once that is over.
      const submitter = event.submitter ?? undefined;
      setTimeout(() => form.requestSubmit(submitter));
      return;
    }
    typed = false;
  });
  document.addEventListener("visibilitychange", () => document.visibilityState === "hidden" && save());
  addEventListener("pagehide", save);
  addEventListener("online", save);
  addEventListener("pageshow", (event) => event.persisted && location.reload());
}
