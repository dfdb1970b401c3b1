using Rinsewright.Engine.Machines;

namespace Rinsewright.Contracts.Records;

/// <summary>What is wrong with a row of a table, in words to come.</summary>
/// <param name="row">Row as a spreadsheet counts it, the head being 1.</param>
/// <param name="key">Word key.</param>
/// <param name="value">What stands there.</param>
public sealed class TableProblem(int row, string key, string value)
{
    /// <summary>Row, the head being 1.</summary>
    public int Row { get; } = row;

    /// <summary>Word key.</summary>
    public string Key { get; } = key;

    /// <summary>What stands there.</summary>
    public string Value { get; } = value;
}

/// <summary>A machine of a table.</summary>
/// <param name="id">Made of the kitchen's and its own name, so that taking the table twice makes it once.</param>
/// <param name="name">Name; empty for none.</param>
/// <param name="kind">Kind.</param>
public sealed class TableMachine(Guid id, string name, MachineKind kind)
{
    /// <summary>Id.</summary>
    public Guid Id { get; } = id;

    /// <summary>Name; empty for none.</summary>
    public string Name { get; } = name;

    /// <summary>Kind.</summary>
    public MachineKind Kind { get; } = kind;
}

/// <summary>A kitchen of a table with its machines.</summary>
/// <param name="id">That of the kitchen with this name, or one made of the name.</param>
/// <param name="known">Whether it is here already.</param>
/// <param name="name">Name.</param>
public sealed class TableKitchen(Guid id, bool known, string name)
{
    /// <summary>Id.</summary>
    public Guid Id { get; } = id;

    /// <summary>Whether it is here already.</summary>
    public bool Known { get; } = known;

    /// <summary>Name.</summary>
    public string Name { get; } = name;

    /// <summary>What the table says of it.</summary>
    public List<KeyValuePair<string, string>> Fields { get; } = [new(KitchenPaths.Name, name)];

    /// <summary>Its machines.</summary>
    public List<TableMachine> Machines { get; } = [];
}

/// <summary>What a table would bring: nothing is written before a person has seen it.</summary>
/// <param name="kitchens">Kitchens, in the order of the table.</param>
/// <param name="problems">Rows or columns that are left out, each with its reason.</param>
public sealed class TablePreview(IReadOnlyList<TableKitchen> kitchens, IReadOnlyList<TableProblem> problems)
{
    /// <summary>Kitchens, in the order of the table.</summary>
    public IReadOnlyList<TableKitchen> Kitchens { get; } = kitchens;

    /// <summary>Rows or columns that are left out.</summary>
    public IReadOnlyList<TableProblem> Problems { get; } = problems;
}
