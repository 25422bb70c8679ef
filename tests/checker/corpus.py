"""The attack corpus as data: which attacks there are, what each states of itself, and which kinds of attack there must be.

An attack is a file in attacks/, in the form of the exercise `resonance`, or a function in shapes.py that lays out a whole
submission. The first lines of either say what it tries and what must come of it.
"""

import re
from pathlib import Path
from typing import NamedTuple

PATH = "unit03_tuned_circuit/resonance.py"
ATTACKS = {path.stem: path.read_text("utf-8") for path in sorted((Path(__file__).parent / "attacks").glob("*.py"))}
_HEADER = re.compile(r"Tries: (?P<tries>.+)\.\nVerdict: (?P<verdict>.+)\.(?:\nSays: (?P<says>.+))?")
HONEST = """import numpy as np
import sympy


def resonant_frequency(inductance, capacitance):
    return 1 / (2 * np.pi * np.sqrt(inductance * capacitance))


def resonance_condition(inductance, capacitance):
    return 1 / sympy.sqrt(inductance * capacitance)
"""
# What a terminal or a page would obey: control characters, and those that turn the direction of writing.
OBEYED = re.compile("[\x00-\x09\x0b-\x1f\x7f-\x9f\u202a-\u202e\u2066-\u2069\ud800-\udfff]")


class Stated(NamedTuple):
    """What an attack says of itself: what it tries, the verdicts that may come of it, and words that must be said."""

    tries: str
    verdicts: tuple[str, ...]
    says: str


def stated(text: str) -> Stated | None:
    """What is stated at the beginning of a text, as a comment or a docstring; None if nothing is."""
    found = _HEADER.match(re.sub("(?m)^ *(# )?", "", text))
    return found and Stated(found["tries"], tuple(found["verdict"].split(" or ")), found["says"] or "")


# Every kind of attack that there must be, and the items that make it. Those of shapes.py are named with "shape:".
KINDS = {
    "reading secrets": "read_passwords read_quietly read_by_numpy read_by_memory_map list_the_home walk_everything look_at_names",
    "reading reference answers": "read_the_reference import_the_reference import_the_reference_past_the_guard read_the_judge",
    "writing outside": "write_outside database_outside change_the_exercises empty_a_library remove_a_file open_a_file_to_all "
    "shared_memory",
    "TCP": "network_tcp network_listen network_by_library",
    "UDP": "network_udp network_name_lookup",
    "Unix sockets": "network_unix",
    "abstract Unix sockets": "network_abstract_unix",
    "netlink": "network_netlink",
    "fork bombs": "fork_bomb worker_pool",
    "thread bombs": "thread_bomb event_loop",
    "starting programs": "subprocess shell become_another_program",
    "memory floods": "memory_flood memory_flood_at_once endless_integer",
    "disk floods": "disk_flood file_of_a_terabyte descriptor_flood",
    "inode floods": "inode_flood",
    "output floods": "print_flood print_flood_past_python reply_flood",
    "ignoring SIGTERM": "ignore_all_signals block_all_signals swallow_the_clock turn_the_clock_off",
    "double-fork daemons": "daemon",
    "killing siblings": "kill_the_neighbours kill_everyone lower_the_others",
    "killing the parent": "kill_the_parent signal_by_a_pipe",
    "raw system calls": "bare_system_calls system_calls_past_the_watch machine_code",
    "tricks with /proc": "read_own_environment read_the_parents_memory write_own_memory read_any_memory",
    "tricks with /dev": "read_a_device type_on_the_terminal",
    "more rights": "another_user another_root raise_its_limits",
    "symlinks in the submission": "shape:soft_link shape:linked_folder shape:linked_submission shape:linked_zip "
    "link_out_of_its_folder",
    "hard links in the submission": "shape:hard_link hard_link_in",
    "zip slip": "shape:zip_slip shape:zip_slip_from_the_root shape:zip_with_a_link",
    "zip bombs": "shape:zip_bomb shape:zip_of_many_bombs shape:zip_bomb_in_another_packing shape:zip_that_lies_about_its_size "
    "shape:zip_spoilt_inside",
    "overlong paths": "shape:overlong_path shape:endless_name",
    "odd file names": "shape:odd_file_names shape:name_that_is_no_text shape:two_names_that_look_alike",
    "what is no file": "shape:pipe_for_a_file shape:pipe_for_a_zip shape:folder_for_a_file",
    "too many and too large files": "shape:too_many_files shape:too_large_a_file",
    "encodings": "shape:encoding_that_raises shape:encoding_of_half_characters shape:no_text_at_all",
    "forging on inherited descriptors": "forge_one_answer forge_all_answers forge_an_array forge_nesting forge_nonsense "
    "close_everything steal_the_questions",
    "replying twice": "answer_twice",
    "asking for what stands in": "forge_a_question stand_in_for_itself",
    "replying for another exercise": "forge_a_verdict answer_for_another_exercise",
    "monkeypatching numpy and builtins": "patch_numpy patch_builtins patch_constants patch_the_worker spoil_the_warm_process",
    "hostile __eq__": "equal_to_everything array_that_agrees",
    "hostile __array__": "object_that_turns_into_an_array",
    "hostile __reduce__": "object_that_unpickles",
    "hostile __repr__": "object_with_a_name",
    "other hostile values": "list_in_itself generator_without_end",
    "hunting through frames": "hunt_through_frames",
    "hunting through gc": "hunt_through_the_heap blind_the_watch watch_the_watch",
    "detecting that it is being marked": "right_only_when_marked learn_the_inputs leave_word_in_scratch",
    "timing out at the last moment": "last_moment endless_pattern never_loads recursion",
    "ending early": "leave_at_once leave_in_the_call exit_politely crash",
    "output that is not UTF-8": "print_no_text print_bytes_that_are_no_text text_that_is_no_text text_that_never_ends",
    "injection in a message": "text_for_a_spreadsheet",
    "injection in a name": "shape:name_with_terminal_codes shape:name_with_html shape:name_that_is_a_formula",
    "changing while it is read": "shape:swapped_while_it_is_read",
    "watching the worker": "watch_every_line break_in_by_a_profile linger_in_the_collector hooks_for_what_goes_wrong "
    "print_the_stack debugger",
    "living past the end": "never_leave return_from_the_dead",
    "signals by other ways": "write_by_faulthandler wake_by_the_reply_pipe",
    "the pipes themselves": "packets_on_the_pipe pipe_of_another_size library_into_the_pipe other_end_of_the_pipe "
    "move_the_pipes_contents dribble more_than_bytes_on_the_line",
    "locks and waiting": "wait_for_itself locks_without_end word_by_a_lock wait_on_a_librarys_page",
    "rare system calls": "wake_the_watchers old_ways_to_share reach_into_the_parent the_machine_itself other_doors_to_files "
    "rules_of_its_own",
    "files held but not opened": "paths_without_reading links_of_the_judge rules_about_itself",
    "memory past Python": "machine_code_from_a_file maps_without_end address_as_an_array array_past_its_end code_made_by_hand",
    "settings and libraries replaced": "another_sympy sympy_with_other_laws replace_the_replacing spoil_the_settings "
    "numpy_calls_back",
    "values that lie about themselves": "list_longer_than_it_says lies_about_its_class class_without_a_name "
    "number_that_says_it_is_numpys array_with_a_long_kind array_that_hides array_that_changes_afterwards",
    "values larger than they look": "list_of_lists_of_lists deep_list",
    "what is called later": "coroutine_for_an_answer answers_by_count",
    "modules and functions that are others": "another_function_each_time another_thing_for_its_module "
    "names_that_are_no_names signature_without_end signature_that_is_none",
    "errors made by hand": "stop_as_the_worker_does line_that_is_not_there line_that_is_no_number name_that_cannot_be_said "
    "file_that_is_never_found traceback_of_its_own lines_that_only_some_count",
    "what is printed": "print_by_its_own_text printed_what_is_no_text",
    "formulas with a will": "formula_of_its_own_mind formula_with_a_program_for_a_name formula_that_explodes",
    "devices and folders": "shape:socket_for_a_file shape:device_for_a_file shape:folder_without_rights "
    "shape:folders_without_end",
    "names that mislead": "shape:name_that_is_blank shape:name_in_another_form shape:name_of_the_first_page "
    "shape:name_that_is_an_option shape:letters_that_look_alike",
    "bytes that mislead": "shape:overlong_letters shape:two_orders_of_bytes shape:marks_and_form_feeds "
    "shape:nothing_in_the_middle",
    "sources that are hard to read": "shape:brackets_without_end shape:signs_without_end shape:branches_without_end "
    "shape:decorators_without_end shape:constants_without_end shape:strings_in_strings shape:quotes_that_never_close "
    "shape:long_in_every_exercise",
    "neighbours among the files": "shape:circle_of_imports shape:stars_without_end",
    "zips that mislead": "shape:zip_that_is_locked shape:zip_with_one_name_twice shape:zip_with_other_systems_names "
    "shape:zip_with_a_name_cut_off shape:zip_with_two_tables shape:zip_behind_a_zip shape:zip_behind_another "
    "shape:zip_of_many_disks shape:zip_in_an_odd_packing shape:zip_with_huge_numbers shape:zip_of_names_alone "
    "shape:zip_of_links_to_itself",
}
