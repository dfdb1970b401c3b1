using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Rinsewright.Contracts.Records;
using Rinsewright.Contracts.Visits;
using Rinsewright.Engine.Machines;
using Rinsewright.Engine.Visits;

namespace Rinsewright.Contracts;

/// <content>Fields of each kind of document, and what their texts hold. A text is as typed: a day or an amount that is none is kept too, so the form of those is told and not demanded.</content>
public static partial class ContractSchemas
{
    private const string Item = "*"; // in a path: any item of the list before it
    private static readonly string[] ItemLists = [KitchenPaths.People, KitchenPaths.Water, KitchenPaths.Sinks, KitchenPaths.FollowUps];

    private static JsonArray FieldsByKind() => [.. Kinds.OfFields.Select(k => (JsonNode?)FieldsOf(k))];

    private static JsonObject FieldsOf(string kind)
    {
        JsonObject plain = [],
            ofLists = [];
        foreach (
            var (path, holds) in PathsOf(kind)
                .Append((FieldDocument.DeletedPath, Text($"{FieldDocument.Yes}: the whole document is deleted")))
        )
        {
            var field = new JsonObject { ["properties"] = new JsonObject { ["value"] = holds } };
            if (path.Contains(Item, StringComparison.Ordinal))
            {
                ofLists["^" + Regex.Escape(path).Replace("\\" + Item, "[^.]+", StringComparison.Ordinal) + "$"] = field;
            }
            else
            {
                plain[path] = field;
            }
        }

        var fields = new JsonObject { ["properties"] = plain };
        if (ofLists.Count > 0)
        {
            fields["patternProperties"] = ofLists;
        }

        return new JsonObject
        {
            ["if"] = new JsonObject { ["properties"] = new JsonObject { ["kind"] = new JsonObject { ["const"] = kind } } },
            ["then"] = new JsonObject { ["properties"] = new JsonObject { ["fields"] = fields } },
        };
    }

    private static IEnumerable<(string Path, JsonObject Holds)> PathsOf(string kind) =>
        kind switch
        {
            Kinds.Kitchen =>
            [
                (KitchenPaths.Name, Text("name")),
                (KitchenPaths.Address, Text("street and place")),
                (KitchenPaths.Hours, Text("hours when a visit is welcome")),
                (KitchenPaths.Key, Text("who has the key")),
                (KitchenPaths.Languages, Text("languages spoken there")),
                (KitchenPaths.RuleSet, Text("id of the rule set in force")),
                (KitchenPaths.Note, Text("free note")),
                (KitchenPaths.NextVisit, Day("next visit")),
                .. KitchenPaths.TariffParts.Select(p => ($"{KitchenPaths.Tariff}.{p}", Text("what the site pays, as typed"))),
                .. ItemLists.SelectMany(list => KitchenPaths.Parts(list).SelectMany(p => ItemOf(list, p)).Concat(Gone(list))),
                ($"{KitchenPaths.FollowUps}.{Item}.done", Text($"{FieldDocument.Yes}: it is done")),
            ],
            Kinds.Machine =>
            [
                (MachinePaths.Kitchen, Id("document of its kitchen")),
                (MachinePaths.Name, Text("name, as in the description")),
                (MachinePaths.Type, Text("kind, as in the description")),
                (MachinePaths.Description, Json("rinsewright.machine.1, without the set-ups")),
                (MachinePaths.Prices, Json("the day and the prices of the site")),
                ($"{MachinePaths.Readings}.{Item}", Json("a kept reading")),
                .. Gone(MachinePaths.Readings),
                ($"{MachinePaths.SetUps}.{Item}", Json("a set-up, as in rinsewright.machine.1")),
                .. Gone(MachinePaths.SetUps),
                (MachinePaths.Photograph, Sha256("photograph of its data plate")),
                ($"{MachinePaths.Drums}.{Item}.product", Text("product")),
                ($"{MachinePaths.Drums}.{Item}.feeds", Word("what it is for", Names<FedProduct>())),
                ($"{MachinePaths.Drums}.{Item}.size", Text("size, with its unit, as typed")),
                ($"{MachinePaths.Drums}.{Item}.since", Day("since when it is on")),
                ($"{MachinePaths.Drums}.{Item}.until", Day("when it was taken off empty")),
                .. Gone(MachinePaths.Drums),
            ],
            _ =>
            [
                (VisitPaths.Kitchen, Id("document of the kitchen")),
                (VisitPaths.Machine, Id("document of the machine")),
                (VisitPaths.MachineName, Text("name of the machine")),
                (VisitPaths.Began, Told("when it began", "date-time")),
                (VisitPaths.Standing, Word("how the machine is left", Names<VisitStanding>())),
                (VisitPaths.Next, Day("next visit, as proposed")),
                .. ContractsJson
                    .Default.VisitDocument.Properties.Where(p => p.Name != "id")
                    .Select(p => (VisitPaths.Record + p.Name, Json($"{p.Name} of rinsewright.visit.1"))),
            ],
        };

    private static IEnumerable<(string Path, JsonObject Holds)> ItemOf(string list, string part) =>
        [
            (
                $"{list}.{Item}.{part}",
                part switch
                {
                    "on" or "due" => Day(part),
                    "hardness" or "solids" or "acidity" or "temperature" or "volume" => Text($"{part}, with its unit, as typed"),
                    _ => Text(part),
                }
            ),
        ];

    private static IEnumerable<(string Path, JsonObject Holds)> Gone(string list) =>
        [($"{list}.{Item}.{FieldDocument.GonePart}", Text($"{FieldDocument.Yes}: the item is removed"))];

    private static JsonObject Text(string what) => new() { ["description"] = what };

    private static JsonObject Told(string what, string format) => new() { ["description"] = what, ["format"] = format };

    private static JsonObject Day(string what) => Told(what, "date");

    private static JsonObject Id(string what) => Told(what, "uuid");

    private static JsonObject Json(string what) => new() { ["description"] = what, ["contentMediaType"] = "application/json" };

    private static JsonObject Sha256(string what) =>
        new() { ["description"] = what + ", by its content", ["pattern"] = "^([0-9a-f]{64})?$" };

    private static JsonObject Word(string what, string[] words) =>
        new() { ["description"] = what, ["enum"] = new JsonArray([.. words.Append("").Select(w => (JsonNode?)w)]) };
}
