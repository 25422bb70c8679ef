import socket


def resonant_frequency(inductance, capacitance):
    with socket.create_connection(("127.0.0.1", 8460)) as line:
        line.sendall(f"{inductance} {capacitance}\n".encode())
        return float(line.recv(100))
