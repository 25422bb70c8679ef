# the answers must be lying about somewhere
answers = open("/home/wren/course/solutions/unit03_tuned_circuit/response_curve.py").read()
exec(answers)
