// Passkeys: a button asks the server what to ask for, the browser asks its owner, and the answer goes back with the form.
// Where a browser knows no passkeys the button stays hidden, and the words beside it say so.

const known = window.PublicKeyCredential?.parseRequestOptionsFromJSON && window.PublicKeyCredential?.parseCreationOptionsFromJSON;

async function ask(form, address) {
  const body = new FormData();
  body.append("__RequestVerificationToken", form.elements["__RequestVerificationToken"].value);
  const answer = await fetch(address, { method: "POST", body, credentials: "same-origin", headers: { Accept: "application/json" } });
  if (!answer.ok) {
    throw new Error(String(answer.status));
  }

  return answer.json();
}

async function credential(form, making) {
  const options = await ask(form, making ? "/account/passkey/make" : "/account/passkey/use");
  return making
    ? navigator.credentials.create({ publicKey: PublicKeyCredential.parseCreationOptionsFromJSON(options) })
    : navigator.credentials.get({ publicKey: PublicKeyCredential.parseRequestOptionsFromJSON(options) });
}

function ready(form) {
  const button = form.querySelector("[data-passkey]");
  const said = form.querySelector("[data-passkey-said]");
  form.hidden = false;
  if (!known) {
    button.hidden = true;
    said.textContent = said.dataset.unknown;
    return;
  }

  button.addEventListener("click", async (event) => {
    event.preventDefault();
    said.textContent = said.dataset.waiting;
    button.disabled = true;
    try {
      form.elements["Form.Credential"].value = JSON.stringify(await credential(form, button.dataset.passkey === "make"));
      form.submit();
    } catch (trouble) {
      said.textContent = trouble.message === "403" ? said.dataset.stale : trouble.message === "429" ? said.dataset.often : said.dataset.failed;
      button.disabled = false;
    }
  });
}

document.querySelectorAll("form[data-passkey-form]").forEach(ready);
