"""`python -m trivet`."""

from trivet.command.main import main

main(prog_name="trivet")
