using System.Text.Json.Nodes;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.ChangeTracking;
using Microsoft.EntityFrameworkCore.Metadata;
using ReedClinic.Data.Letters;
using ReedClinic.Data.Recordings;
using ReedClinic.Data.TeachingNotes;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Recordings;

namespace ReedClinic.Data.Privacy;

/// <summary>Everything that is kept of one person, as they may take it along.</summary>
/// <param name="About">The rows of every area, each with the properties that the data map gives to the person.</param>
/// <param name="Letters">The letters that were sent.</param>
/// <param name="Reeds">The reeds, with the batch they came in.</param>
public sealed record PersonCopy(JsonObject About, IReadOnlyList<SentLetter> Letters, IReadOnlyList<ReedInCopy> Reeds)
{
    /// <summary>The sounds and photographs of the reeds, as far as they are the student's to hear and see.</summary>
    public IReadOnlyList<FileInCopy> Files { get; init; } = [];
}

/// <summary>A sound or photograph in a copy.</summary>
/// <param name="Code">The batch it belongs to.</param>
/// <param name="Number">The number of its reed.</param>
/// <param name="Name">A name of ours.</param>
/// <param name="Path">Where the file lies.</param>
public sealed record FileInCopy(BatchCode Code, int Number, string Name, string Path);

/// <summary>A reed in a copy.</summary>
/// <param name="Code">The batch it came in.</param>
/// <param name="SubmittedAt">When that was announced.</param>
/// <param name="Reed">The reed.</param>
public sealed record ReedInCopy(BatchCode Code, DateTimeOffset SubmittedAt, Reed Reed);

/// <summary>Puts a copy together.</summary>
internal static class PersonCopies
{
    public static async Task<PersonCopy> CopyAsync(this ClinicDb db, AccountId? account, StudentId? student, MediaFolder media, CancellationToken ct)
    {
        var about = new JsonObject();
        List<(string Area, IQueryable<object> Rows)> areas =
        [
            .. student is { } person ? PersonRows.OfStudent(db, person, own: account is not null) : [],
            .. account is { } signIn ? PersonRows.OfAccount(db, signIn) : [],
        ];
        foreach (var (area, rows) in areas)
        {
            about[area] = new JsonArray([.. (await rows.ToListAsync(ct).ConfigureAwait(false)).Select(row => (JsonNode)Row(db.Entry(row), own: account is not null))]);
        }

        return new PersonCopy(
            about,
            student is { } writtenTo ? await LettersAsync(db, writtenTo, media, ct).ConfigureAwait(false) : [],
            student is { } sender ? await ReedsAsync(db, sender, ct).ConfigureAwait(false) : [])
        {
            Files = student is { } heard ? await FilesAsync(db, heard, media, ct).ConfigureAwait(false) : [],
        };
    }

    private static JsonObject Row(EntityEntry row, bool own)
    {
        var told = new JsonObject();
        Tell(told, "", row.Metadata, row.Properties, own);
        foreach (var part in row.ComplexProperties)
        {
            Tell(told, part.Metadata.Name + ".", row.Metadata, part.Properties, own);
        }

        // A part that is stored apart, such as what is known of a passkey.
        foreach (var owned in row.References.Where(reference => reference.Metadata.TargetEntityType.IsOwned() && reference.TargetEntry is not null))
        {
            Tell(told, "", owned.Metadata.TargetEntityType, owned.TargetEntry!.Properties, own);
        }

        return told;
    }

    private static void Tell(JsonObject told, string prefix, IEntityType entity, IEnumerable<PropertyEntry> properties, bool own)
    {
        foreach (var property in properties)
        {
            var name = prefix + property.Metadata.Name;
            if (Owners(entity).Any(owner => DataMap.Own.IsExported(DataMap.NameOf(owner), name, own)))
            {
                told[name] = Value(property);
            }
        }
    }

    private static IEnumerable<IEntityType> Owners(IEntityType entity)
    {
        for (var owner = entity; owner is not null; owner = owner.BaseType)
        {
            yield return owner;
        }
    }

    // As it is stored: plain words, numbers and moments.
    private static JsonValue? Value(PropertyEntry property)
    {
        var stored = property.CurrentValue is { } value && property.Metadata.GetTypeMapping().Converter is { } converter
            ? converter.ConvertToProvider(value)
            : property.CurrentValue;
        return stored switch
        {
            null => null,
            string text => JsonValue.Create(text),
            bool yes => JsonValue.Create(yes),
            int number => JsonValue.Create(number),
            long number => JsonValue.Create(number),
            double number => JsonValue.Create(number),
            DateTime moment => JsonValue.Create(DateTime.SpecifyKind(moment, DateTimeKind.Utc)),
            DateTimeOffset moment => JsonValue.Create(moment),
            _ => JsonValue.Create(Convert.ToString(stored, System.Globalization.CultureInfo.InvariantCulture)),
        };
    }

    private static async Task<IReadOnlyList<SentLetter>> LettersAsync(ClinicDb db, StudentId student, MediaFolder media, CancellationToken ct)
    {
        var sent = await (
            from batch in db.Set<Batch>()
            where batch.Student == student
            join person in db.Set<Student>() on batch.Student equals person.Id
            join sending in db.Set<LetterSending>() on batch.Id equals sending.Batch
            join version in db.Set<LetterVersion>() on new { sending.Batch, Number = sending.VersionNumber } equals new { version.Batch, version.Number }
            orderby sending.SentAt
            select new { version.Payload, person.Country, sending.Batch, sending.SentAt, sending.Ordinal, sending.WhatChanged }).ToListAsync(ct).ConfigureAwait(false);
        List<SentLetter> letters =
        [
            .. sent.Select(row => new SentLetter(LetterPayload.Read(row.Payload), row.SentAt, row.Country)
            {
                Ordinal = row.Ordinal,
                WhatChanged = row.WhatChanged,
                Replaces = sent.FirstOrDefault(other => other.Batch == row.Batch && other.Ordinal == row.Ordinal - 1)?.SentAt,
                ReplacedAt = sent.FirstOrDefault(other => other.Batch == row.Batch && other.Ordinal == row.Ordinal + 1)?.SentAt,
            }),
        ];
        for (var at = 0; at < letters.Count; at++)
        {
            letters[at] = await db.WithPicturesAsync(letters[at], media, ct).ConfigureAwait(false);
        }

        return letters;
    }

    private static async Task<IReadOnlyList<FileInCopy>> FilesAsync(ClinicDb db, StudentId student, MediaFolder media, CancellationToken ct)
    {
        var rows = await (
            from batch in db.Set<Batch>()
            where batch.Student == student
            join reed in db.Set<Reed>() on batch.Id equals reed.Batch
            join recording in db.RecordingsOf(db.Set<Batch>().Where(batch => batch.Student == student)) on reed.Id equals recording.Reed
            orderby recording.RecordedAt
            select new { batch.Code, reed.Number, recording.Id, recording.Kind, recording.Type, recording.File }).ToListAsync(ct).ConfigureAwait(false);
        return
        [
            .. rows.Where(row => media.Has(row.File)).Select(row => new FileInCopy(
                row.Code, row.Number, $"{row.Kind.ToString().ToLowerInvariant()}-{row.Id.Value}.{row.Type.Ending()}", media.PathOf(row.File))),
        ];
    }

    private static async Task<IReadOnlyList<ReedInCopy>> ReedsAsync(ClinicDb db, StudentId student, CancellationToken ct)
    {
        var batches = await db.Set<Batch>().AsNoTracking().Include(batch => batch.Reeds).Where(batch => batch.Student == student)
            .OrderBy(batch => batch.SubmittedAt).ToListAsync(ct).ConfigureAwait(false);
        return [.. batches.SelectMany(batch => batch.Reeds.Select(reed => new ReedInCopy(batch.Code, batch.SubmittedAt, reed)))];
    }
}
