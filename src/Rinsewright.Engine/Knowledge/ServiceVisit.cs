namespace Rinsewright.Engine.Knowledge;

/// <summary>A good visit, and what goes with it.</summary>
/// <param name="Principles">What holds at every visit.</param>
/// <param name="Stations">Its stations in order.</param>
/// <param name="Verdicts">What a visit can conclude.</param>
/// <param name="ReportContents">What the report carries.</param>
/// <param name="Intervals">How often things are due.</param>
/// <param name="VanStock">What the van carries.</param>
/// <param name="ConsumptionPer1000Racks">What a thousand racks use: an estimate.</param>
/// <param name="TrainingTopics">Lessons.</param>
/// <param name="SignOff">What a crew member shows.</param>
/// <param name="Quiz">Questions.</param>
public sealed record ServiceVisit(
    IReadOnlyList<VisitText> Principles,
    IReadOnlyList<VisitStation> Stations,
    IReadOnlyList<VisitVerdict> Verdicts,
    IReadOnlyList<VisitText> ReportContents,
    IReadOnlyList<DueInterval> Intervals,
    IReadOnlyList<VanItem> VanStock,
    IReadOnlyList<Consumption> ConsumptionPer1000Racks,
    IReadOnlyList<TrainingTopic> TrainingTopics,
    IReadOnlyList<SignOffPoint> SignOff,
    IReadOnlyList<QuizQuestion> Quiz
);

/// <summary>A sentence with its source.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Text">The sentence.</param>
/// <param name="Src">Where it comes from.</param>
public sealed record VisitText(string Id, Phrase Text, IReadOnlyList<string> Src);

/// <summary>A station of a visit.</summary>
/// <param name="Id">Its id, <c>sv-</c>.</param>
/// <param name="Order">Its place, from 1.</param>
/// <param name="Zone">Id of the zone.</param>
/// <param name="Do">What is done.</param>
/// <param name="Uses">Ids of findings taken there.</param>
/// <param name="Minutes">How long it takes.</param>
/// <param name="Pass">What passes.</param>
/// <param name="Fail">What is done where it does not.</param>
/// <param name="Report">What the report says of it.</param>
/// <param name="Src">Where it comes from.</param>
public sealed record VisitStation(
    string Id,
    int Order,
    string Zone,
    Phrase Do,
    IReadOnlyList<string> Uses,
    double Minutes,
    Phrase Pass,
    Phrase Fail,
    Phrase Report,
    IReadOnlyList<string> Src
);

/// <summary>What a visit can conclude.</summary>
/// <param name="Id">Its id, <c>vd-</c>.</param>
/// <param name="Rule">When.</param>
/// <param name="Words">In what words.</param>
/// <param name="Src">Where it comes from.</param>
public sealed record VisitVerdict(string Id, Phrase Rule, Phrase Words, IReadOnlyList<string> Src);

/// <summary>How often something is due.</summary>
/// <param name="Id">Its id, <c>iv-</c>.</param>
/// <param name="What">What is due.</param>
/// <param name="Days">Usual days between.</param>
/// <param name="ShorterWhen">When sooner.</param>
/// <param name="Src">Where it comes from.</param>
public sealed record DueInterval(string Id, Phrase What, int Days, Phrase ShorterWhen, IReadOnlyList<string> Src);

/// <summary>Something the van carries.</summary>
/// <param name="Id">Its id, <c>vs-</c>.</param>
/// <param name="Item">What it is.</param>
/// <param name="Qty">How many.</param>
/// <param name="For">Ids of faults it mends.</param>
/// <param name="Src">Where it comes from.</param>
public sealed record VanItem(string Id, Phrase Item, Phrase Qty, IReadOnlyList<string> For, IReadOnlyList<string> Src);

/// <summary>What a thousand racks use.</summary>
/// <param name="Id">Its id, <c>cu-</c>.</param>
/// <param name="Item">What it is.</param>
/// <param name="Low">Little.</param>
/// <param name="Typical">Usual.</param>
/// <param name="High">Much.</param>
/// <param name="Unit"><c>L</c>, <c>kg</c> or <c>pieces</c>.</param>
/// <param name="Note">What goes with it.</param>
/// <param name="Src">Where it comes from.</param>
public sealed record Consumption(
    string Id,
    Phrase Item,
    double Low,
    double Typical,
    double High,
    string Unit,
    IReadOnlyList<string> Src,
    Phrase? Note = null
);

/// <summary>A lesson.</summary>
/// <param name="Id">Its id, <c>tt-</c>.</param>
/// <param name="Title">Its title.</param>
/// <param name="Minutes">How long it takes.</param>
/// <param name="Who">For whom.</param>
/// <param name="Proves">Ids of procedure steps that show it was learnt.</param>
/// <param name="Src">Where it comes from.</param>
public sealed record TrainingTopic(
    string Id,
    Phrase Title,
    double Minutes,
    string Who,
    IReadOnlyList<string> Proves,
    IReadOnlyList<string> Src
);

/// <summary>What a crew member shows.</summary>
/// <param name="Id">Its id, <c>so-</c>.</param>
/// <param name="Text">What is shown.</param>
/// <param name="Step">Id of the procedure step.</param>
/// <param name="Src">Where it comes from.</param>
public sealed record SignOffPoint(string Id, Phrase Text, string Step, IReadOnlyList<string> Src);

/// <summary>A question.</summary>
/// <param name="Id">Its id, <c>qz-</c>.</param>
/// <param name="Topic">Id of the lesson.</param>
/// <param name="Who">For whom.</param>
/// <param name="Question">The question.</param>
/// <param name="Options">Answers to choose from.</param>
/// <param name="Answer">Which is right, from 0.</param>
/// <param name="Why">Why.</param>
/// <param name="Src">Where it comes from.</param>
public sealed record QuizQuestion(
    string Id,
    string Topic,
    string Who,
    Phrase Question,
    IReadOnlyList<Phrase> Options,
    int Answer,
    Phrase Why,
    IReadOnlyList<string> Src
);
