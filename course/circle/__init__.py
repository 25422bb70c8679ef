"""The invented world of the course, once: stations, what they send, components, sets, and how loud it all is played.

Whoever wants a number of the Circle's in a figure, a sound or the bench takes it here, or from the reference that works with
it. What the references themselves need stays with them and is imported here: `unit01_signal.club_stations`,
`unit02_coil_and_condenser.club_coil`, `unit04_crystal_set.crystal_set`, `unit05_valve.one_valve_set`,
`unit06_reaction.network`, `unit07_oscillation.stage`, `unit08_two_stations.club_evening` and
`unit09_feedback_receivers.isolated_set` and `evening` in `solutions/`. No number stands twice.
"""
