/** Pictures of the job, fetched signed; they live in memory and are given back when others need the room. */

import {Patience} from './connection.js';

export class Pictures {
  #connection;
  #most;
  #held = new Map();

  constructor(connection, most = 60) {
    this.#connection = connection;
    this.#most = most;
  }

  /**
   * Shows a picture in an img as soon as it is there; until then what it shows stays.
   *
   * @param edge 320 or 1600: at most so many pixels on its longer side
   */
  show(img, token, edge) {
    const wanted = token ? `/picture/${token}?edge=${edge}` : '';
    if (img.dataset.picture === wanted) {
      return;
    }
    img.dataset.picture = wanted;
    if (!wanted) {
      img.removeAttribute('src');
      img.hidden = true;
      return;
    }
    this.#fill(img, wanted, new Patience());
  }

  #fill(img, path, patience) {
    this.#address(path).then(
      (address) => {
        if (img.dataset.picture === path) {
          img.src = address;
          img.hidden = false;
        }
      },
      (failure) => {
        // A picture that may not be seen any more is no failure of the line.
        if (img.dataset.picture === path && img.isConnected && !failure.gone) {
          setTimeout(() => this.#fill(img, path, patience), patience.next());
        }
      },
    );
  }

  #address(path) {
    const held = this.#held.get(path);
    this.#held.delete(path);
    const address = held ?? this.#fetched(path);
    this.#held.set(path, address);
    if (!held) {
      address.catch(() => this.#held.delete(path));
      this.#makeRoom();
    }
    return address;
  }

  async #fetched(path) {
    const response = await this.#connection.send('GET', path);
    if (!response.ok) {
      throw Object.assign(new Error(`status ${response.status}`), {gone: [403, 404, 410].includes(response.status)});
    }
    return URL.createObjectURL(await response.blob());
  }

  /** The ones that were not asked for for longest go, but none that is on the screen. */
  #makeRoom() {
    for (const [path, address] of this.#held) {
      if (this.#held.size <= this.#most) {
        return;
      }
      if (!document.querySelector(`img[data-picture="${CSS.escape(path)}"]`)) {
        this.#held.delete(path);
        address.then((url) => URL.revokeObjectURL(url), () => {});
      }
    }
  }

  /** Nothing of it stays in memory. */
  close() {
    this.#held.forEach((address) => address.then((url) => URL.revokeObjectURL(url), () => {}));
    this.#held.clear();
  }
}
