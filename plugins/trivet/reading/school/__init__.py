"""The school side: one module for each kind of file under school/, and the checks that need more than one of them."""
