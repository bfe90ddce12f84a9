// Keeps an open page of the preview as its files are: again when it changed, its style without that, its strip at once.
(() => {
  "use strict";
  const here = document.getElementById("ballband-live");
  if (!here) return;
  const place = `ballband ${location.pathname}`;
  const kept = sessionStorage.getItem(place);
  if (kept !== null) {
    sessionStorage.removeItem(place);
    scrollTo(0, Number(kept));
  }
  const again = () => {
    sessionStorage.setItem(place, String(scrollY));
    location.reload();
  };
  const restyle = (address) => {
    const old = [...document.querySelectorAll('link[rel="stylesheet"]')].find(
      (link) => link.getAttribute("href").split("?")[0] === address.split("?")[0],
    );
    if (!old || old.getAttribute("href") === address) return;
    const fresh = old.cloneNode();
    fresh.href = address;
    // The old sheet goes only when the new one is there, so that nothing flickers.
    fresh.addEventListener("load", () => old.remove());
    old.after(fresh);
  };
  const box = document.getElementById("ballband-strip");
  let told = box.innerHTML;
  const show = (html) => {
    box.innerHTML = html;
    // The end of the page can be scrolled clear of the strip.
    document.body.style.paddingBottom = `${box.offsetHeight + 16}px`;
  };
  const strip = (html) => {
    told = html;
    show(html);
  };
  show(told);
  let seen = here.dataset.seen;
  let source = null;
  const listen = () => {
    if (source) return;
    source = new EventSource(
      `/desk/events?page=${encodeURIComponent(location.pathname)}&seen=${encodeURIComponent(seen)}`,
    );
    const on = (kind, act) =>
      source.addEventListener(kind, (event) => {
        seen = event.lastEventId;
        act(event.data);
      });
    on("page", again);
    on("look", again);
    on("style", restyle);
    on("strip", strip);
    let lost = 0;
    source.addEventListener("error", () => {
      clearTimeout(lost);
      lost = setTimeout(
        () => show('<p class="error">The preview has stopped, and this page may be old. Start <code>watch</code> again.</p>'),
        2000,
      );
    });
    source.addEventListener("open", () => {
      clearTimeout(lost);
      show(told);
    });
  };
  const rest = () => {
    if (source) source.close();
    source = null;
  };
  // A browser keeps few connections to one host, so a page that nobody looks at does not hold one.
  document.addEventListener("visibilitychange", () => (document.hidden ? rest() : listen()));
  addEventListener("pagehide", rest);
  addEventListener("pageshow", listen);
  listen();
})();
