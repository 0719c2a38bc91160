// The front page: take the reader's sheets into the visit, say which are kept, and print the blank.
(() => {
  const most = 1000000; // bytes: no sheet of a lift is larger
  const input = document.getElementById("sheets");
  const shown = document.getElementById("kept");

  function element(kind, words, more = {}) {
    return Object.assign(document.createElement(kind), { textContent: words }, more);
  }

  function show(trouble = []) {
    const files = liftcalcVisit.kept();
    shown.replaceChildren(...trouble.map((words) => element("p", words)));
    if (!files.length) return;
    const list = document.createElement("ul");
    for (const file of files) {
      const item = document.createElement("li");
      const forget = element("button", "Forget it", { type: "button", className: "light" });
      forget.setAttribute("aria-label", `Forget ${file.name}`);
      forget.onclick = () => {
        liftcalcVisit.forget(file.name);
        show();
        input.focus();
      };
      item.append(element("span", file.name), forget);
      list.append(item);
    }
    shown.append(element("p", "Kept for this visit:"), list);
  }

  async function taken(file) {
    const bytes = new Uint8Array(await file.arrayBuffer());
    let text = "";
    for (let start = 0; start < bytes.length; start += 8192)
      text += String.fromCharCode(...bytes.subarray(start, start + 8192));
    return { name: file.name, content: btoa(text) };
  }

  input.onchange = async () => {
    const trouble = [];
    const came = [];
    for (const file of input.files) {
      if (file.size > most) trouble.push(`${file.name} is larger than 1 MB: that is no sheet of a lift. It was not taken.`);
      else if (!file.size) trouble.push(`${file.name} is empty. It was not taken.`);
      else came.push(await taken(file));
    }
    if (came.length && !liftcalcVisit.keep(came))
      trouble.push("This browser has no room for these files. Give them on the page itself, by its button.");
    input.value = "";
    show(trouble);
  };

  document.getElementById("print").onclick = () => {
    const held = document.querySelector("a[download='field_sheet_blank.html']").href.split(",")[1];
    const bytes = Uint8Array.from(atob(held), (letter) => letter.charCodeAt(0));
    const frame = document.getElementById("blank");
    frame.hidden = false;
    frame.style.cssText = "position:absolute;left:-9999px;width:210mm;height:297mm;border:0";
    frame.setAttribute("aria-hidden", "true");
    frame.tabIndex = -1;
    frame.onload = () => frame.contentWindow.print();
    frame.srcdoc = new TextDecoder().decode(bytes);
  };

  addEventListener("pageshow", () => show()); // also where the reader comes back to it
})();
