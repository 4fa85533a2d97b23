"""How long a sitting of practice is: some ten minutes do, and after twenty ears want a rest.

Sessions of about eight minutes taught faster than long ones (Molloy 2012); a day's minimum, then nothing is added by
more (Wright and Sabin 2007).
"""

from __future__ import annotations

STOP_MINUTES, REST_MINUTES = 10, 20
