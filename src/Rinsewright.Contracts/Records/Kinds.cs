namespace Rinsewright.Contracts.Records;

/// <summary>Kinds of documents.</summary>
public static class Kinds
{
    /// <summary>A proof: one author, written whole.</summary>
    public const string Proof = "proof";

    /// <summary>A kitchen: fields, <see cref="KitchenPaths"/>.</summary>
    public const string Kitchen = "kitchen";

    /// <summary>A machine: fields, <see cref="MachinePaths"/>.</summary>
    public const string Machine = "machine";

    /// <summary>A visit: fields, <see cref="Visits.VisitPaths"/>.</summary>
    public const string Visit = "visit";

    /// <summary>Those that are documents of fields.</summary>
    public static IReadOnlyList<string> OfFields { get; } = [Kitchen, Machine, Visit];
}

/// <summary>Fields of a kitchen. A list is <c>list.item.field</c>, the item's id made where it is added.</summary>
public static class KitchenPaths
{
    /// <summary>Name.</summary>
    public const string Name = "name";

    /// <summary>Street and place.</summary>
    public const string Address = "address";

    /// <summary>Hours when a visit is welcome.</summary>
    public const string Hours = "hours";

    /// <summary>Who has the key.</summary>
    public const string Key = "key";

    /// <summary>Languages spoken there.</summary>
    public const string Languages = "languages";

    /// <summary>Id of the rule set in force.</summary>
    public const string RuleSet = "ruleSet";

    /// <summary>Free note.</summary>
    public const string Note = "note";

    /// <summary>Day of the next visit, <c>2026-12-03</c>.</summary>
    public const string NextVisit = "nextVisit";

    /// <summary>What the site pays; fields as in <see cref="TariffParts"/>.</summary>
    public const string Tariff = "tariff";

    /// <summary>Readings of the water supply: <c>on</c>, <c>hardness</c>, <c>solids</c>, <c>acidity</c>, <c>temperature</c>, <c>note</c>.</summary>
    public const string Water = "water";

    /// <summary>Sinks: <c>name</c>, <c>volume</c>.</summary>
    public const string Sinks = "sinks";

    /// <summary>People: <c>name</c>, <c>role</c>, <c>phone</c>, <c>language</c>.</summary>
    public const string People = "people";

    /// <summary>What is to be done: <c>what</c>, <c>due</c>, <c>take</c>, <c>done</c>.</summary>
    public const string FollowUps = "followUps";

    /// <summary>Fields of one item of each list, in the order they are asked for.</summary>
    public static IReadOnlyList<string> Parts(string list) =>
        list switch
        {
            Water => ["on", "hardness", "solids", "acidity", "temperature", "note"],
            Sinks => ["name", "volume"],
            People => ["name", "role", "phone", "language"],
            FollowUps => ["what", "due", "take"],
            _ => [],
        };

    /// <summary>What is paid for: currency, a kilowatt hour, water and sewer, heating it.</summary>
    public static IReadOnlyList<string> TariffParts { get; } = ["currency", "electricity", "fuel", "water", "hotWater"];
}

/// <summary>Fields of a machine.</summary>
public static class MachinePaths
{
    /// <summary>Id of its kitchen.</summary>
    public const string Kitchen = "kitchen";

    /// <summary>Name, copied out of the description so that a list need not open it.</summary>
    public const string Name = "name";

    /// <summary>Kind of machine, copied out likewise: id of the machine file, for example <c>flight</c>.</summary>
    public const string Type = "type";

    /// <summary>Text of the machine file, without the set-ups.</summary>
    public const string Description = "description";

    /// <summary>The day and prices of the site, as JSON.</summary>
    public const string Prices = "prices";

    /// <summary>Kept readings, each an item: its JSON.</summary>
    public const string Readings = "readings";

    /// <summary>Set-ups from the Bench, each an item: its JSON.</summary>
    public const string SetUps = "setUps";

    /// <summary>Photograph of its data plate: the file's SHA-256; empty where it was removed.</summary>
    public const string Photograph = "photograph";

    /// <summary>Drums and products on it: <c>product</c>, <c>feeds</c>, <c>size</c>, <c>since</c>, <c>until</c>.</summary>
    public const string Drums = "drums";

    /// <summary>Fields of one drum.</summary>
    public static IReadOnlyList<string> DrumParts { get; } = ["product", "feeds", "size", "since", "until"];
}
