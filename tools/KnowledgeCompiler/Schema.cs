namespace Rinsewright.KnowledgeCompiler;

/// <summary>The shape of every file of the knowledge: what <c>knowledge/README.md</c> says in words.</summary>
internal static class Schema
{
    private static readonly Field[] Named = [Id, Name, Src];

    /// <summary>Files in the order they are compiled; the shape of each, and the list it consists of where it is nothing but one.</summary>
    public static IReadOnlyList<(string File, string? Only)> Files { get; } =
    [
        ("common", null),
        ("sources", "sources"),
        ("parts", null),
        ("procedures", "procedures"),
        ("observables", null),
        ("faults", "faults"),
        ("likelihoods", null),
        ("ware-results", "results"),
        ("service-visit", null),
        ("glossary", "terms"),
    ];

    /// <summary>Prefix an id of a list carries.</summary>
    public static IReadOnlyDictionary<string, string[]> Prefixes { get; } =
        new Dictionary<string, string[]>(StringComparer.Ordinal)
        {
            ["symptoms"] = ["sym-", "ctx-"],
            ["readings"] = ["rd-"],
            ["checks"] = ["chk-"],
            ["results"] = ["wr-"],
            ["stations"] = ["sv-"],
            ["quiz"] = ["qz-"],
            ["sign-off"] = ["so-"],
            ["training-topics"] = ["tt-"],
            ["cases"] = ["dc-"],
        };

    public static IReadOnlyDictionary<string, Field[]> Shapes { get; } =
        new Dictionary<string, Field[]>(StringComparer.Ordinal)
        {
            ["common"] =
            [
                new("groups", Holds.Lists, "machine-type"),
                List("zones", "named"),
                List("hazards", "hazard"),
                List("people", "person"),
                List("states", "named"),
                List("frequencies", "named"),
                List("impacts", "named"),
                List("agents", "agent"),
                new("rinse", Holds.Shape, "rinse"),
            ],
            ["named"] = Named,
            ["hazard"] = [.. Named, Text("caution")],
            ["person"] = [.. Named, Flag("licensed")],
            ["agent"] = [.. Named, Refs("reacts", "agent").May, Text("caution")],
            ["rinse"] = [Text("action"), Text("check"), Text("caution"), Src],
            ["sources"] = [List("sources", "source")],
            ["source"] =
            [
                Id,
                Text("label") with
                {
                    Spanish = "es",
                },
                Words("basis", "opened|second-hand|from-memory|common-practice"),
                new("how", Holds.Left),
                new("used-for", Holds.Left, Needed: false),
                new("bib", Holds.Plain, Needed: false),
            ],
            ["parts"] = [new("curtain-plan-confidence", Holds.Left), List("machine-types", "machine-type"), List("parts", "part")],
            ["machine-type"] =
            [
                .. Named,
                new("sanitizing", Holds.References, "mode"),
                Text("flow"),
                Number("tanks"),
                Refs("zones", "zone"),
                Text("cycle"),
                new("typical", Holds.Map),
                Text("water-change"),
                Refs("out-order", "part"),
                Refs("in-order", "part"),
                List("curtains", "curtain"),
                Texts("watch"),
            ],
            ["curtain"] = [new("slot", Holds.Plain), Words("length", "long|short"), Text("why")],
            ["part"] =
            [
                .. Named,
                Ref("zone", "zone"),
                Refs("machines", "machine"),
                Text("does"),
                Texts("out").May,
                Texts("in").May,
                Texts("check"),
                Texts("wear"),
                Text("clean-tool").May,
                Text("clean-way").May,
                Ref("clean-every", "frequency").May,
                Ref("check-every", "frequency"),
                Ref("who", "person"),
                Refs("faults", "fault"),
            ],
            ["procedures"] = [List("procedures", "procedure")],
            ["procedure"] =
            [
                .. Named,
                Text("purpose"),
                Text("when"),
                Refs("machines", "machine"),
                Text("supervision"),
                Texts("ppe"),
                Number("minutes"),
                List("steps", "step"),
            ],
            ["step"] =
            [
                Id,
                Ref("zone", "zone"),
                Ref("part", "part"),
                Refs("machines", "machine"),
                Ref("who", "person"),
                Number("minutes"),
                Text("action"),
                Text("check"),
                Ref("hazard", "hazard"),
                Text("caution").May,
                Refs("prevents", "fault").May,
                Src,
            ],
            ["observables"] = [List("symptoms", "symptom"), List("readings", "reading"), List("checks", "check")],
            ["symptom"] =
            [
                Id,
                Words("kind", "ware|machine|proof|context"),
                new("cluster", Holds.Plain),
                Text("name"),
                Refs("machines", "machine"),
                new("say", Holds.Plains),
                new("say-es", Holds.Plains),
                Refs("ask-next", "observable").May,
                Flag("first"),
                Src,
            ],
            ["reading"] =
            [
                .. Named,
                Ref("zone", "zone"),
                new("unit", Holds.Plain),
                Refs("machines", "machine"),
                List("normal", "normal"),
                List("states", "reading-state"),
                Text("method"),
                Text("instrument"),
                Text("accuracy"),
                new("accuracy-src", Holds.Left, Needed: false),
                Number("minutes"),
                Ref("machine", "state"),
                Ref("risk", "hazard"),
                Ref("who", "person"),
                Ref("sanitizing", "mode").May,
            ],
            ["normal"] =
            [
                Refs("machines", "machine"),
                new("mode", Holds.Plain),
                Number("min").May,
                Number("max").May,
                Text("note").May,
                new("unit", Holds.Left, Needed: false),
                Src,
                Ref("max-src", "source").May,
            ],
            ["reading-state"] = [new("id", Holds.Plain), Text("when")],
            ["check"] =
            [
                .. Named,
                Ref("zone", "zone"),
                Text("found-when"),
                Text("how"),
                Words("kind", "visual|functional"),
                Number("minutes"),
                Ref("machine", "state"),
                Text("tool").May,
                Ref("risk", "hazard"),
                Ref("who", "person"),
                Refs("machines", "machine"),
                Refs("agents", "agent-or-rinse").May,
                Flag("first"),
            ],
            ["faults"] = [List("faults", "fault")],
            ["fault"] =
            [
                .. Named,
                Ref("zone", "zone"),
                Ref("part", "part"),
                Refs("machines", "machine"),
                Ref("impact", "impact"),
                Words("stop-use", "yes|if-proof-fails|no"),
                new("prior", Holds.Shape, "prior"),
                Text("mechanism"),
                new("effects", Holds.Left),
                new("confirm", Holds.Shape, "confirm"),
                Text("cure"),
                Number("minutes"),
                Texts("spares").May,
                Ref("who", "person"),
                Refs("safety", "hazard").May,
                Text("recurs"),
                Refs("agents", "agent-or-rinse").May,
                Ref("sanitizing", "mode").May,
            ],
            ["prior"] = [Number("weight"), new("unit", Holds.Left), new("basis", Holds.Left)],
            ["confirm"] = [Refs("by", "finding").May, Text("also").May],
            ["likelihoods"] =
            [
                new("levels", Holds.Numbers),
                Number("prior-scale"),
                new("leak-note", Holds.Left),
                new("leaks", Holds.Numbers),
                List("faults", "links"),
                Src,
            ],
            ["links"] = [new("id", Holds.Reference, "fault"), .. Levels.Names.Select(l => Refs(l, "finding").May), new("src", Holds.Left)],
            ["ware-results"] = [List("results", "ware-result")],
            ["ware-result"] =
            [
                .. Named,
                Refs("symptoms", "finding"),
                Text("look"),
                Refs("causes", "fault"),
                List("tests", "ware-test"),
                Texts("cure"),
                Refs("agents", "agent-or-rinse").May,
                Refs("safety", "hazard").May,
                Text("mistake"),
            ],
            ["ware-test"] = [Ref("do", "finding"), Text("if-found"), Refs("points", "fault")],
            ["service-visit"] =
            [
                List("principles", "visit-text"),
                List("stations", "station"),
                List("verdicts", "verdict"),
                List("report-contents", "visit-text"),
                List("intervals", "interval"),
                List("van-stock", "van-item"),
                List("consumption-per-1000-racks", "consumption"),
                List("training-topics", "topic"),
                List("sign-off", "sign-off"),
                List("quiz", "question"),
            ],
            ["visit-text"] = [Id, Text("text"), Src],
            ["station"] =
            [
                Id,
                Number("order"),
                Ref("zone", "zone"),
                Text("do"),
                Refs("uses", "observable").May,
                Number("minutes"),
                Text("pass"),
                Text("fail"),
                Text("report"),
                Src,
            ],
            ["verdict"] = [Id, Text("rule"), Text("words"), Src],
            ["interval"] = [Id, Text("what"), Number("days"), Text("shorter-when"), Src],
            ["van-item"] = [Id, Text("item"), Text("qty"), Refs("for", "fault").May, Src],
            ["consumption"] =
            [
                Id,
                Text("item"),
                Number("low"),
                Number("typical"),
                Number("high"),
                Words("unit", "L|kg|pieces"),
                Text("note").May,
                Src,
            ],
            ["topic"] = [Id, Text("title"), Number("minutes"), Ref("who", "person"), Refs("proves", "step"), Src],
            ["sign-off"] = [Id, Text("text") with { Spanish = "es" }, Ref("step", "step"), Src],
            ["question"] =
            [
                Id,
                Ref("topic", "topic"),
                Ref("who", "person"),
                Text("question"),
                Texts("options"),
                Number("answer"),
                Text("why"),
                Src,
            ],
            ["glossary"] = [List("terms", "term")],
            ["term"] = [Id, Text("en") with { Spanish = "es", As = "term" }, Text("means"), Src],
            ["diagnosis-cases"] = [List("cases", "case")],
            ["case"] =
            [
                Id,
                Words("set", "tune|hold"),
                Ref("machine", "machine-type"),
                Ref("sanitizing", "mode"),
                Refs("complaint", "finding"),
                Refs("then-found", "finding").May,
                Refs("then-not-found", "finding").May,
                Ref("expect-top-3", "fault"),
                Refs("also-acceptable", "fault").May,
                Src,
            ],
        };

    private static Field Id => new("id", Holds.Id);

    private static Field Name => new("name", Holds.Text, Spanish: "es");

    private static Field Src => new("src", Holds.References, "source");

    private static Field Text(string key) => new(key, Holds.Text, Spanish: key + "-es");

    private static Field Texts(string key) => new(key, Holds.Texts, Spanish: key + "-es");

    private static Field Ref(string key, string of) => new(key, Holds.Reference, of);

    private static Field Refs(string key, string of) => new(key, Holds.References, of);

    private static Field Number(string key) => new(key, Holds.Number);

    private static Field Flag(string key) => new(key, Holds.Flag, Needed: false);

    private static Field List(string key, string shape) => new(key, Holds.Shapes, shape);

    private static Field Words(string key, string words) => new(key, Holds.Plain, words);
}
