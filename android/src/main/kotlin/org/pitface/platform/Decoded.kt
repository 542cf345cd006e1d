package org.pitface.platform

import android.graphics.Bitmap
import android.graphics.BitmapFactory
import android.graphics.Matrix
import android.media.ExifInterface
import androidx.compose.ui.graphics.ImageBitmap
import androidx.compose.ui.graphics.asImageBitmap

/** A photo as its camera held it, read no larger than needed: at least [side] pixels wide where it has them. `null` where it is no picture. */
internal fun decoded(path: String, side: Int): ImageBitmap? = runCatching {
    val bounds = BitmapFactory.Options().apply { inJustDecodeBounds = true }
    BitmapFactory.decodeFile(path, bounds)
    val narrow = minOf(bounds.outWidth, bounds.outHeight)
    val options = BitmapFactory.Options().apply { inSampleSize = maxOf(1, Integer.highestOneBit(maxOf(1, narrow / maxOf(1, side)))) }
    BitmapFactory.decodeFile(path, options)?.let { upright(it, path) }?.asImageBitmap()
}.getOrNull()

private fun upright(picture: Bitmap, path: String): Bitmap {
    val (turn, mirrored) = when (ExifInterface(path).getAttributeInt(ExifInterface.TAG_ORIENTATION, ExifInterface.ORIENTATION_NORMAL)) {
        ExifInterface.ORIENTATION_FLIP_HORIZONTAL -> 0f to true
        ExifInterface.ORIENTATION_ROTATE_180 -> 180f to false
        ExifInterface.ORIENTATION_FLIP_VERTICAL -> 180f to true
        ExifInterface.ORIENTATION_TRANSPOSE -> 270f to true
        ExifInterface.ORIENTATION_ROTATE_90 -> 90f to false
        ExifInterface.ORIENTATION_TRANSVERSE -> 90f to true
        ExifInterface.ORIENTATION_ROTATE_270 -> 270f to false
        else -> return picture
    }
    val matrix = Matrix().apply {
        if (mirrored) postScale(-1f, 1f)
        postRotate(turn)
    }
    return Bitmap.createBitmap(picture, 0, 0, picture.width, picture.height, matrix, true)
}
