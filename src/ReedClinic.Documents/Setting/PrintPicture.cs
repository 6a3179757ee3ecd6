namespace ReedClinic.Documents.Setting;

/// <summary>A picture to be printed.</summary>
/// <param name="File">The whole file, PNG or JPEG.</param>
/// <param name="Width">How many pixels it is wide, as it is looked at.</param>
/// <param name="Height">How many it is high.</param>
/// <param name="WayUp">Which way up its file has it, as Exif counts it; 1 for upright.</param>
public sealed record PrintPicture(ReadOnlyMemory<byte> File, int Width, int Height, int WayUp);
