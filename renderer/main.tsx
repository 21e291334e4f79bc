import { StrictMode } from "react";
import { createRoot } from "react-dom/client";

const place = document.getElementById("root");
if (place === null) throw new Error("the page has no element with the id root");

createRoot(place).render(
  <StrictMode>
    <main>
      <h1>Swingstill</h1>
      <p>The door is computed on the command line so far: npm run -s swingstill -- review FILE</p>
    </main>
  </StrictMode>,
);
