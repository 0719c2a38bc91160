"""A way to a server that can be cut off for a while, as a network is."""

import contextlib
import select
import socket
import threading


class Way:
    """Carries what comes to a port of its own on to another port, and back.

    Parameters
    ----------
    to : int
        The port of the server.
    """

    def __init__(self, to):
        self._to, self._ends = to, set()
        self._door = socket.create_server(("127.0.0.1", 0))
        self.port = self._door.getsockname()[1]
        self.is_cut, self._closed = False, False
        threading.Thread(target=self._carry, daemon=True).start()

    def cut(self):
        """Break every connection and take no new one."""
        self.is_cut = True

    def mend(self):
        """Carry again."""
        self.is_cut = False

    def close(self):
        """End it."""
        self._closed = True

    def _carry(self):
        other = {}
        while not self._closed:
            if self.is_cut:
                self._hang_up(other, list(other))
            for ready in select.select([self._door, *other], [], [], 0.05)[0]:
                if ready is self._door:
                    came, _ = self._door.accept()
                    if self.is_cut:
                        came.close()
                        continue
                    onward = socket.create_connection(("127.0.0.1", self._to))
                    other[came], other[onward] = onward, came
                elif ready in other:
                    data = b""
                    with contextlib.suppress(OSError):
                        data = ready.recv(65536)
                        other[ready].sendall(data)
                    if not data:
                        self._hang_up(other, [ready])
        self._hang_up(other, list(other))
        self._door.close()

    def _hang_up(self, other, ends):
        for end in ends:
            if end in other:
                across = other.pop(end)
                del other[across]
                end.close()
                across.close()
