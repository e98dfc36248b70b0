"""The command ``packet``; one command a file. Only this room prints."""
