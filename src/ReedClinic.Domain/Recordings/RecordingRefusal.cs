using System.Globalization;
using ReedClinic.Domain.Outcomes;

namespace ReedClinic.Domain.Recordings;

/// <summary>Why a file isn't taken.</summary>
public enum RecordingRefusal
{
    /// <summary>There is nothing in it.</summary>
    Empty,

    /// <summary>More bytes than its kind may have.</summary>
    TooLarge,

    /// <summary>No kind of file that is kept.</summary>
    NotKnown,

    /// <summary>A HEIC or AVIF photograph: phones make them, most browsers can't show them.</summary>
    Heic,

    /// <summary>A photograph where a sound belongs.</summary>
    NotASound,

    /// <summary>A sound where a photograph belongs.</summary>
    NotAPhoto,

    /// <summary>There are pictures in the sound.</summary>
    Film,

    /// <summary>It isn't whole, or says of itself what isn't so.</summary>
    Broken,

    /// <summary>It plays too long.</summary>
    TooLong,

    /// <summary>It has too many pixels.</summary>
    TooManyPixels,

    /// <summary>A picture that moves.</summary>
    Moving,

    /// <summary>What arrived isn't what was sent.</summary>
    Changed,

    /// <summary>Not all of it has arrived.</summary>
    NotWhole,

    /// <summary>The reed has as many of this kind as it may have.</summary>
    ReedFull,

    /// <summary>The student, or the studio, has as much as it may have.</summary>
    NoRoom,

    /// <summary>The disk is full.</summary>
    DiskFull,

    /// <summary>The parcel was opened: what the student gave stays as it is.</summary>
    ParcelOpened,

    /// <summary>The letter was sent and doesn't change any more.</summary>
    LetterSent,
}

/// <summary>What is told when a file isn't taken.</summary>
public static class RecordingRefusals
{
    /// <summary>The field that a problem with the file names.</summary>
    public const string Field = "File";

    /// <summary>One plain sentence or two that say what to do.</summary>
    /// <param name="refusal">Why it isn't taken.</param>
    /// <param name="kind">What it was meant to be.</param>
    public static string Words(this RecordingRefusal refusal, RecordingKind kind) => refusal switch
    {
        RecordingRefusal.Empty => "There is nothing in this file. Please choose another one.",
        RecordingRefusal.TooLarge => string.Create(CultureInfo.InvariantCulture, $"This file is too large: at most {RecordingLimits.Bytes(kind) / RecordingLimits.Chunk} megabytes. Please send a shorter or smaller one."),
        RecordingRefusal.Heic => "This is a HEIC photograph, which most browsers can’t show. Please save it as JPEG and send that.",
        RecordingRefusal.NotASound => "This is a photograph. Please choose a sound file here.",
        RecordingRefusal.NotAPhoto => "This is a sound file. Please choose a photograph here.",
        RecordingRefusal.Film => "This is a film. Please send its sound alone.",
        RecordingRefusal.Broken => "This file isn’t whole, or it isn’t what it says it is. Please save it anew and send it again.",
        RecordingRefusal.TooLong => string.Create(CultureInfo.InvariantCulture, $"This plays too long: at most {RecordingLimits.Length(kind).TotalMinutes} minutes. Please cut it shorter."),
        RecordingRefusal.TooManyPixels => string.Create(CultureInfo.InvariantCulture, $"This photograph has too many pixels: at most {RecordingLimits.Pixels / 1_000_000} million. Please make it smaller."),
        RecordingRefusal.Moving => "This picture moves. Please send a still photograph.",
        RecordingRefusal.Changed => "What arrived isn’t what was sent. Please send it again.",
        RecordingRefusal.NotWhole => "Not all of it has arrived yet. Please send it again.",
        RecordingRefusal.ReedFull => string.Create(CultureInfo.InvariantCulture, $"This reed has {RecordingLimits.OnReed(kind)} of these already. Please remove one first."),
        RecordingRefusal.NoRoom => "There is no room for more sounds and photographs. Please ask the studio to remove some.",
        RecordingRefusal.DiskFull => "There is no room on the studio’s disk just now. Nothing that was kept is lost. Please tell the studio, and try again later.",
        RecordingRefusal.ParcelOpened => "The parcel was opened, so what you gave with it stays as it is. Please ask the studio.",
        RecordingRefusal.LetterSent => "The letter was sent, so what is in it stays as it is.",
        _ when kind.IsPhoto() => "This isn’t a photograph that can be kept. JPEG, PNG and WebP can.",
        _ => "This isn’t a sound that can be kept. WAV, MP3, M4A, Ogg, WebM and FLAC can.",
    };

    /// <summary>The same as a problem of the field with the file.</summary>
    /// <param name="refusal">Why it isn't taken.</param>
    /// <param name="kind">What it was meant to be.</param>
    public static Problem Problem(this RecordingRefusal refusal, RecordingKind kind) => new(Field, refusal.Words(kind));
}
