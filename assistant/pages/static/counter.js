// Sends a message without leaving the page, so that a screen reader hears the answer where it comes.
// Without this file every form still works.
"use strict";
(() => {
  const send = async (form, button) => {
    const words = new FormData(form);
    if (button && button.name) words.set(button.name, button.value);
    const talk = document.getElementById("talk");
    const waiting = document.createElement("p");
    waiting.className = "waiting";
    waiting.textContent = "The counter is looking it up …";
    talk.append(waiting);
    for (const each of document.querySelectorAll("main button")) each.disabled = true;
    const answer = await fetch(form.action, {
      method: "POST", body: new URLSearchParams(words), credentials: "same-origin",
    });
    const page = new DOMParser().parseFromString(await answer.text(), "text/html");
    const main = page.querySelector("main");
    if (!main) throw new Error("no page came");
    const known = new Set([...talk.querySelectorAll("article")].map((each) => each.id));
    for (const name of ["refused", "begin-here", "below", "foot"]) {
      document.getElementById(name).replaceWith(document.adoptNode(page.getElementById(name)));
    }
    waiting.remove();
    for (const old of talk.querySelectorAll("form.choices")) old.remove();
    let last = null;
    for (const each of main.querySelectorAll("#talk > article")) {
      if (known.has(each.id)) continue;
      last = talk.appendChild(document.adoptNode(each));
    }
    for (const each of document.querySelectorAll("main button")) each.disabled = false;
    document.title = page.title;
    if (last) {
      document.getElementById("words").value = "";
      history.replaceState(null, "", `#${last.id}`);
      last.scrollIntoView({ block: "start" });
      last.focus({ preventScroll: true });
    }
  };
  document.addEventListener("submit", (event) => {
    const form = event.target;
    if (new URL(form.action).pathname !== "/say") return;
    event.preventDefault();
    send(form, event.submitter).catch(() => {
      for (const each of document.querySelectorAll("main button")) each.disabled = false;
      document.querySelector(".waiting")?.remove();
      const told = document.createElement("p");
      told.className = "refused";
      told.setAttribute("role", "alert");
      told.textContent = "The shop cannot be reached just now. What you wrote is still here; try again.";
      document.getElementById("refused").replaceChildren(told);
    });
  });
})();
