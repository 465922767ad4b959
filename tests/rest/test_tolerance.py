def test_tolerance_follows_the_bench(client):
    inch = client.get("/recipes/window-seat/tolerance").json
    metric = client.get("/recipes/window-seat/tolerance.json?bench=bench-metric").json
    assert inch["accuracy"]["text"] == "1/64 in" and metric["accuracy"]["text"] == "0.5 mm"
    assert [piece["id"] for piece in inch["pieces"]] == [piece["id"] for piece in metric["pieces"]]


def test_unknown_bench_is_not_found(client):
    assert client.get("/recipes/window-seat/tolerance?bench=benhc").status_code == 404


def test_recipe_with_errors_is_refused(client):
    answer = client.get("/recipes/broken/tolerance")
    assert answer.status_code == 422 and answer.json["errors"]
