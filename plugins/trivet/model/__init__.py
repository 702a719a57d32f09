"""What a unit, a school, a roster, a plan and a problem are: values only, standard library only."""
