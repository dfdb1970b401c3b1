using System.Globalization;
using Rinsewright.Contracts.Visits;
using Rinsewright.Engine.Visits;

namespace Rinsewright.Files.Sheets;

internal sealed partial class VisitReportContent
{
    // A report goes through the phone's own mail: twelve photographs of a visit are some megabytes.
    private const int MostPhotos = 12;

    private void AddPhotos(List<SheetBlock> blocks)
    {
        if (paper.Photos is not { } kept || paper.Visit.Photos.Count == 0)
        {
            return;
        }

        var here = paper.Visit.Photos.Where(p => kept.ContainsKey(p.Sha256)).ToList();
        blocks.Add(new SheetHeading(2, Words["visit.sheet.photos-head"]));
        blocks.Add(new SheetPhotos([.. here.Take(MostPhotos).Select(p => new SheetPhoto(kept[p.Sha256], PhotoText(p)))]));
        if (paper.Visit.Photos.Count - Math.Min(here.Count, MostPhotos) is > 0 and var rest)
        {
            blocks.Add(new SheetParagraph(Words.Say("visit.sheet.photos-rest", ("count", Words.Number(rest, 0))), Small: true));
        }
    }

    private string PhotoText(VisitPhoto photo)
    {
        var part = paper.Result.Parts.FirstOrDefault(p => p.Part.Id == photo.Part)?.Part.Name;
        var zone = paper.Knowledge.Common.Zones.FirstOrDefault(z => z.Id == photo.Zone)?.Name;
        return string.Join(
            ", ",
            new[]
            {
                VisitWords.Capital(said.Word(photo.Moment)),
                photo.At is { } at ? Words.Moment(at) : null,
                (part ?? zone)?.In(Words.Language),
            }.OfType<string>()
        );
    }
}
