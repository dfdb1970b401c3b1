using Rinsewright.Engine.Knowledge;

namespace Rinsewright.Knowledge;

/// <summary>One reader for each shape; named arguments stand in the order of the compiler's <c>Schema</c>, which is the order of evaluation.</summary>
internal static class SectionReaders
{
    public static SharedLists Common(KnowledgeReader r) =>
        new(
            Groups: r.Map(x => x.Texts()),
            Zones: r.List(Named),
            Hazards: r.List(x => new Hazard(Id: x.Text(), Name: x.Phrase(), Src: x.Texts(), Caution: x.Phrase())),
            People: r.List(x => new Person(Id: x.Text(), Name: x.Phrase(), Src: x.Texts(), Licensed: x.Flag())),
            States: r.List(Named),
            Frequencies: r.List(Named),
            Impacts: r.List(Named),
            Agents: r.List(x => new Agent(Id: x.Text(), Name: x.Phrase(), Src: x.Texts(), Reacts: x.Texts(), Caution: x.Phrase())),
            Rinse: new RinseBetween(Action: r.Phrase(), Check: r.Phrase(), Caution: r.Phrase(), Src: r.Texts())
        );

    public static IReadOnlyList<KnownSource> Sources(KnowledgeReader r) =>
        r.List(x => new KnownSource(Id: x.Text(), Label: x.Phrase(), Basis: x.Text(), Bib: x.TextOrNull()));

    public static Anatomy Anatomy(KnowledgeReader r) => new(MachineTypes: r.List(Machine), Parts: r.List(Part));

    public static IReadOnlyList<Procedure> Procedures(KnowledgeReader r) =>
        r.List(x => new Procedure(
            Id: x.Text(),
            Name: x.Phrase(),
            Src: x.Texts(),
            Purpose: x.Phrase(),
            When: x.Phrase(),
            Machines: x.Texts(),
            Supervision: x.Phrase(),
            Ppe: x.Phrases(),
            Minutes: x.Number(),
            Steps: x.List(Step)
        ));

    public static TradeObservables Observables(KnowledgeReader r) =>
        new(Symptoms: r.List(Symptom), Readings: r.List(Reading), Checks: r.List(Check));

    public static IReadOnlyList<TradeFault> Faults(KnowledgeReader r) =>
        r.List(x => new TradeFault(
            Id: x.Text(),
            Name: x.Phrase(),
            Src: x.Texts(),
            Zone: x.Text(),
            Part: x.Text(),
            Machines: x.Texts(),
            Impact: x.Text(),
            StopUse: x.Text(),
            Prior: new FaultPrior(x.Number()),
            Mechanism: x.Phrase(),
            Confirm: new Confirmation(By: x.Texts(), Also: x.PhraseOrNull()),
            Cure: x.Phrase(),
            Minutes: x.Number(),
            Spares: x.Phrases(),
            Who: x.Text(),
            Safety: x.Texts(),
            Recurs: x.Phrase(),
            Agents: x.Texts(),
            Sanitizing: x.TextOrNull()
        ));

    public static Likelihoods Likelihoods(KnowledgeReader r) =>
        new(
            Levels: r.Map(x => x.Number()),
            PriorScale: r.Number(),
            Leaks: r.Map(x => x.Number()),
            Faults: r.List(x => new FaultFindings(
                Id: x.Text(),
                Always: x.Texts(),
                Usual: x.Texts(),
                Often: x.Texts(),
                Sometimes: x.Texts(),
                Rare: x.Texts(),
                Never: x.Texts()
            )),
            Src: r.Texts()
        );

    public static IReadOnlyList<WareResult> WareResults(KnowledgeReader r) =>
        r.List(x => new WareResult(
            Id: x.Text(),
            Name: x.Phrase(),
            Src: x.Texts(),
            Symptoms: x.Texts(),
            Look: x.Phrase(),
            Causes: x.Texts(),
            Tests: x.List(t => new WareTest(Do: t.Text(), IfFound: t.Phrase(), Points: t.Texts())),
            Cure: x.Phrases(),
            Agents: x.Texts(),
            Safety: x.Texts(),
            Mistake: x.Phrase()
        ));

    public static ServiceVisit Visit(KnowledgeReader r) =>
        new(
            Principles: r.List(VisitText),
            Stations: r.List(Station),
            Verdicts: r.List(x => new VisitVerdict(Id: x.Text(), Rule: x.Phrase(), Words: x.Phrase(), Src: x.Texts())),
            ReportContents: r.List(VisitText),
            Intervals: r.List(x => new DueInterval(
                Id: x.Text(),
                What: x.Phrase(),
                Days: x.Whole(),
                ShorterWhen: x.Phrase(),
                Src: x.Texts()
            )),
            VanStock: r.List(x => new VanItem(Id: x.Text(), Item: x.Phrase(), Qty: x.Phrase(), For: x.Texts(), Src: x.Texts())),
            ConsumptionPer1000Racks: r.List(x => new Consumption(
                Id: x.Text(),
                Item: x.Phrase(),
                Low: x.Number(),
                Typical: x.Number(),
                High: x.Number(),
                Unit: x.Text(),
                Note: x.PhraseOrNull(),
                Src: x.Texts()
            )),
            TrainingTopics: r.List(x => new TrainingTopic(
                Id: x.Text(),
                Title: x.Phrase(),
                Minutes: x.Number(),
                Who: x.Text(),
                Proves: x.Texts(),
                Src: x.Texts()
            )),
            SignOff: r.List(x => new SignOffPoint(Id: x.Text(), Text: x.Phrase(), Step: x.Text(), Src: x.Texts())),
            Quiz: r.List(x => new QuizQuestion(
                Id: x.Text(),
                Topic: x.Text(),
                Who: x.Text(),
                Question: x.Phrase(),
                Options: x.Phrases(),
                Answer: x.Whole(),
                Why: x.Phrase(),
                Src: x.Texts()
            ))
        );

    public static IReadOnlyList<TradeTerm> Terms(KnowledgeReader r) =>
        r.List(x => new TradeTerm(Id: x.Text(), Term: x.Phrase(), Means: x.Phrase(), Src: x.Texts()));

    private static KnownName Named(KnowledgeReader r) => new(Id: r.Text(), Name: r.Phrase(), Src: r.Texts());

    private static KnownMachine Machine(KnowledgeReader r) =>
        new(
            Id: r.Text(),
            Name: r.Phrase(),
            Src: r.Texts(),
            Sanitizing: r.Texts(),
            Flow: r.Phrase(),
            Tanks: r.Whole(),
            Zones: r.Texts(),
            Cycle: r.Phrase(),
            Typical: r.Map(x => x.Text()),
            WaterChange: r.Phrase(),
            OutOrder: r.Texts(),
            InOrder: r.Texts(),
            Curtains: r.List(x => new CurtainSlot(Slot: x.Text(), Length: x.Text(), Why: x.Phrase())),
            Watch: r.Phrases()
        );

    private static Part Part(KnowledgeReader r) =>
        new(
            Id: r.Text(),
            Name: r.Phrase(),
            Src: r.Texts(),
            Zone: r.Text(),
            Machines: r.Texts(),
            Does: r.Phrase(),
            Out: r.Phrases(),
            In: r.Phrases(),
            Check: r.Phrases(),
            Wear: r.Phrases(),
            CleanTool: r.PhraseOrNull(),
            CleanWay: r.PhraseOrNull(),
            CleanEvery: r.TextOrNull(),
            CheckEvery: r.Text(),
            Who: r.Text(),
            Faults: r.Texts()
        );

    private static ProcedureStep Step(KnowledgeReader r) =>
        new(
            Id: r.Text(),
            Zone: r.Text(),
            Part: r.Text(),
            Machines: r.Texts(),
            Who: r.Text(),
            Minutes: r.Number(),
            Action: r.Phrase(),
            Check: r.Phrase(),
            Hazard: r.Text(),
            Caution: r.PhraseOrNull(),
            Prevents: r.Texts(),
            Src: r.Texts()
        );

    private static Symptom Symptom(KnowledgeReader r) =>
        new(
            Id: r.Text(),
            Kind: r.Text(),
            Cluster: r.Text(),
            Name: r.Phrase(),
            Machines: r.Texts(),
            Say: r.Texts(),
            SayEs: r.Texts(),
            AskNext: r.Texts(),
            First: r.Flag(),
            Src: r.Texts()
        );

    private static KnownReading Reading(KnowledgeReader r) =>
        new(
            Id: r.Text(),
            Name: r.Phrase(),
            Src: r.Texts(),
            Zone: r.Text(),
            Unit: r.Text(),
            Machines: r.Texts(),
            Normal: r.List(x => new NormalRange(
                Machines: x.Texts(),
                Mode: x.Text(),
                Min: x.NumberOrNull(),
                Max: x.NumberOrNull(),
                Note: x.PhraseOrNull(),
                Src: x.Texts(),
                MaxSrc: x.TextOrNull()
            )),
            States: r.List(x => new ReadingState(Id: x.Text(), When: x.Phrase())),
            Method: r.Phrase(),
            Instrument: r.Phrase(),
            Accuracy: r.Phrase(),
            Minutes: r.Number(),
            Machine: r.Text(),
            Risk: r.Text(),
            Who: r.Text(),
            Sanitizing: r.TextOrNull()
        );

    private static TradeCheck Check(KnowledgeReader r) =>
        new(
            Id: r.Text(),
            Name: r.Phrase(),
            Src: r.Texts(),
            Zone: r.Text(),
            FoundWhen: r.Phrase(),
            How: r.Phrase(),
            Kind: r.Text(),
            Minutes: r.Number(),
            Machine: r.Text(),
            Tool: r.PhraseOrNull(),
            Risk: r.Text(),
            Who: r.Text(),
            Machines: r.Texts(),
            Agents: r.Texts(),
            First: r.Flag()
        );

    private static VisitText VisitText(KnowledgeReader r) => new(Id: r.Text(), Text: r.Phrase(), Src: r.Texts());

    private static VisitStation Station(KnowledgeReader r) =>
        new(
            Id: r.Text(),
            Order: r.Whole(),
            Zone: r.Text(),
            Do: r.Phrase(),
            Uses: r.Texts(),
            Minutes: r.Number(),
            Pass: r.Phrase(),
            Fail: r.Phrase(),
            Report: r.Phrase(),
            Src: r.Texts()
        );
}
